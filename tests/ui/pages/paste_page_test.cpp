// Sets as text, on a real book.
#include "ui/pages/import/paste_page.h"

#include "core/book/book.h"
#include "tests/support/scripted_prompter.h"
#include "tests/support/temp_book.h"
#include "ui/shell/review_store.h"

#include <QtTest/QSignalSpy>
#include <QtTest/QTest>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QPushButton>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

// The book's only lifter is Ada Fulcrum.
struct PasteBook {
    explicit PasteBook(bool chosen = false)
        : page(std::make_unique<PastePage>(UiContext{*book, reviews, prompter, book.clock(), jobs},
                                           chosen ? std::optional(book.athlete()) : std::nullopt))
    {
        page->show();
    }
    void type(const char* text) const { page->setText(QString::fromUtf8(text)); }
    [[nodiscard]] QStringList readings() const
    {
        return page->findChildren<QPlainTextEdit*>()[1]->toPlainText().split(u'\n');
    }
    [[nodiscard]] QPushButton& bringIn() const
    {
        for (QPushButton* button : page->findChildren<QPushButton*>())
            if (button->text() == QStringLiteral("&Bring in")) return *button;
        qFatal("No such button");
    }

    test::TempBook book;
    JobRunner jobs;
    ScriptedPrompter prompter;
    ReviewStore reviews{*book, book.clock(), jobs,
                        [](const RosterReviewRequest&, const Progress&) { return std::vector<AthleteReview>(); }};
    std::unique_ptr<PastePage> page;
};

TEST(PastePage, ReadsEachLineBesideItsText)
{
    const PasteBook c;
    c.type("Ada Fulcrum:\n\n+ Row\n60x10 w @8; 9-1");
    const QStringList readings = c.readings();
    ASSERT_EQ(readings.size(), 4);
    EXPECT_EQ(readings[0], QStringLiteral("Ada Fulcrum"));
    EXPECT_EQ(readings[2], QStringLiteral("Row (new in the library)"));
    EXPECT_EQ(readings[3],
              QStringLiteral("60 kg × 10, watched, all to the standard, RPE 8; 60 kg × 9, 1 off standard"));
    EXPECT_TRUE(c.bringIn().isEnabled());
}

TEST(PastePage, MarksWhatDoesNotFitAndBringsNothingInBeforeItDoes)
{
    const PasteBook c(true);
    c.type("+ Row\n60x10 zz");
    EXPECT_TRUE(c.readings()[1].startsWith(QStringLiteral("⚠ ")));
    EXPECT_FALSE(c.bringIn().isEnabled());
    const auto marks = c.page->findChildren<QPlainTextEdit*>()[0]->extraSelections();
    ASSERT_EQ(marks.size(), 1);
    EXPECT_EQ(marks[0].cursor.selectedText(), QStringLiteral("z"));
    EXPECT_EQ(marks[0].cursor.selectionStart(), 12);
}

TEST(PastePage, BringsSetsInForTheChosenLifterAsOneEdit)
{
    PasteBook c(true);
    Book& book = *c.book;
    c.type("+ Row\n60x10; 9; 8");
    QSignalSpy imported(c.page.get(), &PastePage::imported);
    c.bringIn().click();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !imported.isEmpty(); }, 20'000));
    EXPECT_EQ(imported[0][0].toInt(), 3);
    EXPECT_EQ(book.database().integer("SELECT count(*) FROM set_entry").value(), 3);
    ASSERT_TRUE(book.history().undo().has_value());
    EXPECT_EQ(book.database().integer("SELECT count(*) FROM set_entry").value(), 0);
}

}  // namespace
}  // namespace steelyard
