#include "ui/pages/floor/floor_page.h"

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "tests/support/scripted_prompter.h"
#include "tests/support/sheet_samples.h"
#include "tests/support/temp_dir.h"
#include "core/sheets/sheet_code.h"
#include "ui/pages/floor/keying_view.h"
#include "ui/pages/floor/sheet_field.h"
#include "ui/pages/floor/sheet_preview.h"
#include "ui/shell/review_store.h"

#include <QtCore/QProcess>
#include <QtPrintSupport/QPrinter>
#include <QtTest/QTest>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListWidget>

#include <gtest/gtest.h>

#include <set>

namespace steelyard {
namespace {

// A lifter who trained on the last three Mondays, in a book on disk.
Result<Id<Athlete>> addRegular(Book& book, QDate monday)
{
    const testing_support::SheetSample sample;
    STEELYARD_TRY(auto transaction, Transaction::begin(book.database()));
    STEELYARD_TRY(const auto athlete, book.athletes().insert(transaction, sample.log.athlete.value));
    STEELYARD_TRY(const auto exercise, book.library().insert(transaction, sample.library.exercises[0].value));
    Variant variant = sample.library.variants[0].value;
    variant.exercise = exercise;
    STEELYARD_TRY(const auto variantId, book.library().insert(transaction, variant));
    STEELYARD_TRY(const auto grip, book.library().insert(transaction, sample.library.grips[0].value));
    RepStandard standard = sample.library.standards[0].value;
    standard.variant = variantId;
    STEELYARD_TRY(const auto standardId, book.library().insert(transaction, standard));
    STEELYARD_TRY(const auto line, book.logbook().line(transaction, {athlete, variantId, grip, standardId}));
    for (int week = 1; week <= 3; ++week) {
        STEELYARD_TRY(const auto session, book.logbook().session(transaction, athlete, monday.addDays(-7 * week)));
        SetEntry set;
        set.load = testing_support::kg(u"40");
        set.reps = 10;
        STEELYARD_TRY(const auto id, book.logbook().insert(transaction, athlete, {session, line, 1, set}));
        Q_UNUSED(id)
    }
    STEELYARD_CHECK(transaction.commit());
    return athlete;
}

class FloorPages : public testing::Test {
protected:
    void SetUp() override
    {
        auto made = Book::create(dir.path(u"club.steelyard"), clock);
        ASSERT_TRUE(made) << qPrintable(made.error().what);
        book = *std::move(made);
        const auto athlete = addRegular(*book, clock.today());
        ASSERT_TRUE(athlete) << qPrintable(athlete.error().what + athlete.error().detail);
    }
    void settle(FloorPage& page)
    {
        ASSERT_TRUE(QTest::qWaitFor([&] { return page.isSettled(); }));
    }

    testing_support::TempDir dir;
    FixedClock clock{QDate(2027, 3, 8)};
    std::unique_ptr<Book> book;
    ScriptedPrompter prompter;
    JobRunner jobs;
};

TEST_F(FloorPages, ShowsWhoIsExpectedAndSavesTheirSheets)
{
    ReviewStore reviews(*book, clock, jobs, {});
    FloorPage page({*book, reviews, prompter, clock, jobs});
    page.show();
    settle(page);
    ASSERT_EQ(page.chosenSheets().size(), 1U);
    EXPECT_EQ(page.chosenSheets()[0].athlete, QStringLiteral("Sample Lifter"));
    prompter.path = dir.path(u"floor.pdf");
    page.perform(QStringLiteral("floor.pdf"));
    EXPECT_TRUE(dir.read(u"floor.pdf").startsWith("%PDF"));
    EXPECT_TRUE(prompter.errors.isEmpty());
}

TEST_F(FloorPages, ADayWithoutAnybodyHasNothingToPrint)
{
    ReviewStore reviews(*book, clock, jobs, {});
    FloorPage page({*book, reviews, prompter, clock, jobs});
    page.show();
    settle(page);
    page.perform(QStringLiteral("floor.nextDay"));
    settle(page);
    EXPECT_TRUE(page.chosenSheets().empty());
    EXPECT_FALSE(page.canPerform(QStringLiteral("floor.print")));
}

TEST_F(FloorPages, AnUntickedLifterIsNotPrinted)
{
    ReviewStore reviews(*book, clock, jobs, {});
    FloorPage page({*book, reviews, prompter, clock, jobs});
    page.show();
    settle(page);
    page.findChild<QListWidget*>(QStringLiteral("dayLifters"))->item(0)->setCheckState(Qt::Unchecked);
    EXPECT_TRUE(page.chosenSheets().empty());
}

TEST_F(FloorPages, WithoutAPrinterOffersAPdf)
{
    ReviewStore reviews(*book, clock, jobs, {});
    FloorPage page({*book, reviews, prompter, clock, jobs});
    page.show();
    settle(page);
    prompter.path = dir.path(u"instead.pdf");
    page.perform(QStringLiteral("floor.print"));
    EXPECT_TRUE(prompter.asked.contains(QStringLiteral("No printer is set up on this machine.")));
    EXPECT_TRUE(dir.read(u"instead.pdf").startsWith("%PDF"));
}

TEST_F(FloorPages, PrintsEachSheetOnThePaperThatThePrinterHolds)
{
    ReviewStore reviews(*book, clock, jobs, {});
    FloorPage page({*book, reviews, prompter, clock, jobs});
    page.show();
    settle(page);
    for (const auto& [paper, file] : {std::pair(QPageSize::A4, u"a4.pdf"), {QPageSize::Letter, u"letter.pdf"}}) {
        const QString path = dir.path(file);
        prompter.printer = [&](const PrintQuestion& question) {
            QPrinter printer;
            printer.setOutputFileName(path);
            printer.setPageSize(QPageSize(paper));
            printer.setFullPage(true);
            return question.paintPages(printer);
        };
        page.perform(QStringLiteral("floor.print"));
        EXPECT_TRUE(prompter.asked.isEmpty());
        QProcess text;
        text.start(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), path, QStringLiteral("-")});
        ASSERT_TRUE(text.waitForFinished());
        EXPECT_TRUE(text.readAllStandardOutput().contains("Sample Lifter"));
    }
}

TEST_F(FloorPages, EveryLayoutIsShownAndSaved)
{
    ReviewStore reviews(*book, clock, jobs, {});
    FloorPage page({*book, reviews, prompter, clock, jobs});
    page.show();
    settle(page);
    prompter.path = dir.path(u"floor.pdf");
    std::set<QByteArray> saved;
    for (const PaperLayout layout : {PaperLayout::Page, PaperLayout::Group, PaperLayout::Week, PaperLayout::Day}) {
        EXPECT_EQ(page.layoutOfPaper(), layout);
        EXPECT_EQ(page.findChild<SheetPreview*>()->pageCount(), 1);
        page.perform(QStringLiteral("floor.pdf"));
        saved.insert(dir.read(u"floor.pdf"));
        page.perform(QStringLiteral("floor.layout"));
        settle(page);
    }
    EXPECT_EQ(page.layoutOfPaper(), PaperLayout::Page) << "the key goes round";
    EXPECT_EQ(saved.size(), 4U);
    EXPECT_TRUE(prompter.errors.isEmpty());
}

// As a scanner does it: the number and Enter.
void scan(FloorPage& page, const QString& number)
{
    page.perform(QStringLiteral("floor.code"));
    auto* line = page.findChild<QLineEdit*>(QStringLiteral("sheetNumber"));
    ASSERT_TRUE(line->isVisible());
    QTest::keyClicks(line, number);
    QTest::keyClick(line, Qt::Key_Return);
}

TEST_F(FloorPages, ANumberOpensItsKeyingOnItsDayAndAgainAfterARestart)
{
    QString number;
    {
        ReviewStore reviews(*book, clock, jobs, {});
        FloorPage page({*book, reviews, prompter, clock, jobs});
        page.show();
        settle(page);
        number = page.chosenSheets().at(0).sheetId;
        scan(page, number);
        ASSERT_TRUE(page.isKeying());
        EXPECT_EQ(page.keying()->desk()->sheet().date, clock.today());
    }
    book.reset();
    auto again = Book::open(dir.path(u"club.steelyard"), clock);
    ASSERT_TRUE(again);
    book = *std::move(again);
    ReviewStore reviews(*book, clock, jobs, {});
    FloorPage page({*book, reviews, prompter, clock, jobs});
    page.show();
    settle(page);
    page.perform(QStringLiteral("floor.nextDay"));
    settle(page);
    QStringList words;
    QObject::connect(&page, &Page::said, &page, [&](const QString& text) { words += text; });
    scan(page, number.toLower());
    ASSERT_TRUE(QTest::qWaitFor([&] { return page.isKeying(); }));
    EXPECT_EQ(page.keying()->desk()->sheet().date, clock.today());
    EXPECT_EQ(words.filter(QStringLiteral("goes to that day")).size(), 1);
}

TEST_F(FloorPages, AWrongNumberIsToldInPlaceAndNothingIsOpened)
{
    ReviewStore reviews(*book, clock, jobs, {});
    FloorPage page({*book, reviews, prompter, clock, jobs});
    page.show();
    settle(page);
    auto* field = page.findChild<SheetField*>();
    const std::pair<QString, QString> wrong[] = {
        {QStringLiteral("hello"), QStringLiteral("not the number of a sheet")},
        {QStringLiteral("04HTQK-1DBM5"), QStringLiteral("compare it with the sheet")},
        {sheetIdFor(QUuid::createUuid(), clock.today()), QStringLiteral("another book")}};
    for (const auto& [number, words] : wrong) {
        scan(page, number);
        EXPECT_TRUE(field->isVisible());
        EXPECT_TRUE(field->message().contains(words)) << qPrintable(field->message());
        EXPECT_FALSE(page.isKeying());
    }
    QTest::keyClick(page.findChild<QLineEdit*>(QStringLiteral("sheetNumber")), Qt::Key_Escape);
    EXPECT_FALSE(field->isVisible());
}

}  // namespace
}  // namespace steelyard
