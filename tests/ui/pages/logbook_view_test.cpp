#include "ui/pages/lifter/logbook_view.h"

#include "core/exchange/book_dump.h"
#include "tests/support/lifter_page_book.h"
#include "ui/pages/lifter/logbook_bulk.h"
#include "ui/pages/lifter/logbook_calendar.h"
#include "ui/pages/lifter/logbook_session.h"

#include <QtTest/QAbstractItemModelTester>
#include <QtTest/QTest>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QSpinBox>
#include <QtWidgets/QTableView>
#include <QtWidgets/QTableWidget>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::must;

struct LogbookCase : testing_support::LifterPageBook {
    QByteArray first;

    explicit LogbookCase(int sessions = 6)
    {
        club.addLine(QStringLiteral("Arm curl"), sessions);
        open();
        EXPECT_TRUE(QTest::qWaitFor([this] { return !chart().spec().empty(); }, 10000));
        page->perform(QStringLiteral("lifter.logbook"));
        EXPECT_TRUE(view().isVisible());
        first = dump();
    }
    ~LogbookCase() { EXPECT_EQ(prompter.asked + prompter.errors, QStringList()) << "the logbook never stops to ask"; }

    [[nodiscard]] QByteArray dump() const { return must(dumpContent(club.book->database())); }
    [[nodiscard]] LogbookView& view() const { return *page->findChild<LogbookView*>(); }
    [[nodiscard]] LogbookCalendar& calendar() const { return *page->findChild<LogbookCalendar*>(); }
    [[nodiscard]] LogbookSession& session() const { return *page->findChild<LogbookSession*>(); }
    [[nodiscard]] LogbookBulk& bulk() const { return *page->findChild<LogbookBulk*>(); }
    [[nodiscard]] QAbstractItemModel& rows() const { return *session().table()->model(); }
    [[nodiscard]] QString typed(int row) const { return rows().index(row, LogbookSetModel::Typed).data().toString(); }
    [[nodiscard]] QString words(int row) const { return rows().index(row, LogbookSetModel::Words).data().toString(); }
    [[nodiscard]] QLineEdit* search() const { return view().findChild<QLineEdit*>(); }
    void go(int row) const { session().table()->setCurrentIndex(rows().index(row, LogbookSetModel::Typed)); }
    [[nodiscard]] QLineEdit* editRow(int row, const QString& action)
    {
        go(row);
        page->perform(action);
        auto* line = session().table()->viewport()->findChild<QLineEdit*>();
        EXPECT_TRUE(line) << row;
        return line;
    }
    // What is typed into a row, and Enter.
    void type(int row, const QString& text, const QString& action = QStringLiteral("lifter.edit"))
    {
        QLineEdit* line = editRow(row, action);
        line->selectAll();
        QTest::keyClicks(line, text);
        QTest::keyClick(line, Qt::Key_Return);
    }
    [[nodiscard]] bool waitFor(const std::function<bool()>& condition) const
    {
        return QTest::qWaitFor(condition, 10000);
    }
    [[nodiscard]] bool becomes(int row, const QString& text) const
    {
        return waitFor([&] { return typed(row) == text; });
    }
    void undoAll()
    {
        while (club.book->history().canUndo() && dump() != first) ASSERT_TRUE(club.book->history().undo());
        EXPECT_EQ(dump(), first);
    }
    template <class Widget>
    [[nodiscard]] Widget& field(const QString& name) const
    {
        for (auto* one : bulk().findChildren<Widget*>())
            if (one->accessibleName() == name) return *one;
        qFatal("no field %s", qPrintable(name));
    }
    [[nodiscard]] QString preview(int row, int column) const
    {
        const auto* item = bulk().findChild<QTableWidget*>()->item(row, column);
        return item ? item->text() : QString();
    }
};

// A line's name, three sets, a row for another one, the rating.
constexpr int kFirstSet = 1;
constexpr int kAddRow = 4;
constexpr int kRatingRow = 5;

TEST(LogbookView, ShowsTheNewestSessionAsItIsTypedAndInWords)
{
    LogbookCase c;
    EXPECT_TRUE(c.says(QStringLiteral("6 session(s)")));
    ASSERT_EQ(c.rows().rowCount(), 6);
    EXPECT_TRUE(c.rows().index(0, 0).data().toString().startsWith(QStringLiteral("Arm curl, straight bar, upright")));
    EXPECT_EQ(c.typed(kFirstSet), QStringLiteral("40x9 rir2"));
    EXPECT_TRUE(c.words(kFirstSet).contains(QStringLiteral("not watched")));
    EXPECT_TRUE(c.words(kAddRow).contains(QStringLiteral("42.5x12")));
    const QAbstractItemModelTester tester(&c.rows(), QAbstractItemModelTester::FailureReportingMode::Fatal);
}

TEST(LogbookView, ChangesASetInPlaceAndBringsTheFormerValueBackAsAnEditOfItsOwn)
{
    LogbookCase c;
    const QString before = c.typed(kFirstSet);
    c.type(kFirstSet, QStringLiteral("42.5x7-2s2 @8"));
    ASSERT_TRUE(c.becomes(kFirstSet, QStringLiteral("42.5x7-2 s2 @8")));
    EXPECT_EQ(c.session().table()->currentIndex().row(), kFirstSet);
    ASSERT_EQ(c.session().before()->count(), 1);
    EXPECT_TRUE(c.session().before()->item(0)->text().contains(QStringLiteral("9")));
    c.page->perform(QStringLiteral("lifter.before"));
    QTest::keyClick(c.session().before(), Qt::Key_Return);
    ASSERT_TRUE(c.becomes(kFirstSet, before));
    EXPECT_EQ(c.session().before()->count(), 2);  // what it said in between is kept as well
    ASSERT_TRUE(c.club.book->history().undo());
    EXPECT_TRUE(c.becomes(kFirstSet, QStringLiteral("42.5x7-2 s2 @8")));
    c.undoAll();
}

TEST(LogbookView, LeavesWhatCannotBeReadInTheLineWithThePlaceSelected)
{
    LogbookCase c;
    QLineEdit* line = c.editRow(kFirstSet, QStringLiteral("lifter.edit"));
    line->selectAll();
    QTest::keyClicks(line, QStringLiteral("40x8 q"));
    EXPECT_NE(c.words(kFirstSet), QStringLiteral("40 kg × 8"));
    QTest::keyClick(line, Qt::Key_Return);
    ASSERT_TRUE(c.session().isEditing());
    EXPECT_EQ(line->selectedText(), QStringLiteral("q"));
    EXPECT_TRUE(c.says(c.words(kFirstSet)));  // whole, below the table
    QTest::keyClick(line, Qt::Key_Backspace);
    EXPECT_TRUE(c.words(kFirstSet).startsWith(QStringLiteral("40")));
    QTest::keyClick(line, Qt::Key_Escape);
    EXPECT_FALSE(c.session().isEditing());
    EXPECT_EQ(c.dump(), c.first);
}

TEST(LogbookView, WhatIsHalfTypedOutlivesARecordThatArrives)
{
    LogbookCase c;
    QLineEdit* line = c.editRow(kFirstSet, QStringLiteral("lifter.edit"));
    line->setText(QStringLiteral("40x"));
    c.club.addSession(must(c.club.book->logbook().lines(*c.club.athlete)).front().value, QDate(2026, 11, 19), 0);
    ASSERT_TRUE(c.settled());
    QTest::qWait(50);
    ASSERT_TRUE(c.session().isEditing());
    EXPECT_EQ(line->text(), QStringLiteral("40x"));
    QTest::keyClick(line, Qt::Key_Escape);
    EXPECT_TRUE(c.waitFor([&] { return c.says(QStringLiteral("7 session(s)")); }));
}

TEST(LogbookView, AddsSetsAtTheEndOfALineAndRepetitionsAloneKeepTheLoad)
{
    LogbookCase c;
    c.type(kFirstSet, QStringLiteral("6 w"), QStringLiteral("lifter.add"));
    ASSERT_TRUE(c.becomes(4, QStringLiteral("40x6 w")));
    EXPECT_EQ(c.rows().rowCount(), 7);
    c.undoAll();
    ASSERT_TRUE(c.waitFor([&] { return c.rows().rowCount() == 6; }));
    c.type(kFirstSet, QString(), QStringLiteral("lifter.add"));  // nothing typed, nothing added
    EXPECT_EQ(c.dump(), c.first);
}

TEST(LogbookView, ARemovedSetCanBeReadAndBroughtBack)
{
    LogbookCase c;
    const QString before = c.typed(2);
    c.go(2);
    ASSERT_TRUE(c.page->canPerform(QStringLiteral("lifter.remove")));
    c.page->perform(QStringLiteral("lifter.remove"));
    ASSERT_TRUE(c.waitFor([&] { return c.rows().rowCount() == 5; }));
    ASSERT_EQ(c.session().before()->count(), 1);
    EXPECT_TRUE(c.session().before()->item(0)->text().startsWith(QStringLiteral("removed on")));
    c.page->perform(QStringLiteral("lifter.before"));
    QTest::keyClick(c.session().before(), Qt::Key_Return);
    ASSERT_TRUE(c.waitFor([&] { return c.rows().rowCount() == 6; }));
    EXPECT_EQ(c.typed(2), before);
    c.undoAll();
}

TEST(LogbookView, RatesAnExerciseOnOneLine)
{
    LogbookCase c;
    EXPECT_TRUE(c.words(kRatingRow).startsWith(QStringLiteral("not rated")));
    c.type(kRatingRow, QStringLiteral("pump 8, elb 2, gave out target"));
    ASSERT_TRUE(c.becomes(kRatingRow, QStringLiteral("pump 8, elbow 2, gave out target")));
    EXPECT_TRUE(c.words(kRatingRow).contains(QStringLiteral("elbow: 2 of 10")));
    c.search()->setText(QStringLiteral("discomfort"));
    EXPECT_TRUE(c.says(QStringLiteral("1 of 6 session(s)")));
    c.undoAll();
}

TEST(LogbookView, CalendarKeysWalkTheDaysThatWereFoundAndEnterGoesToTheirSets)
{
    LogbookCase c(12);
    const QDate newest = c.view().day();
    QTest::keyClick(&c.calendar(), Qt::Key_Left);
    EXPECT_EQ(c.view().day(), newest.addDays(-3));
    QTest::keyClick(&c.calendar(), Qt::Key_Up);
    EXPECT_EQ(c.view().day(), newest.addDays(-10));
    QTest::keyClick(&c.calendar(), Qt::Key_Home);
    const QDate oldest = c.view().day();
    QTest::keyClick(&c.calendar(), Qt::Key_Left);
    EXPECT_EQ(c.view().day(), oldest);
    c.search()->setText(newest.toString(QStringLiteral("yyyy-MM")));
    QTest::keyClick(&c.calendar(), Qt::Key_End);
    QTest::keyClick(&c.calendar(), Qt::Key_Home);
    EXPECT_EQ(c.view().day().month(), newest.month());
    EXPECT_TRUE(c.calendar().rect().contains(c.calendar().placeOf(c.view().day())));
    EXPECT_TRUE(c.calendar().accessibleDescription().contains(QStringLiteral("3 set(s)")));
}

TEST(LogbookView, EnterOnTheChartOpensTheSessionAndItsNameLeadsBack)
{
    LogbookCase c(12);
    QTest::keyClick(&c.view(), Qt::Key_Escape);
    ASSERT_TRUE(c.chart().isVisible());
    c.chart().select(4);
    const QDate day = c.chart().spec().reps.points[4].date;
    QTest::keyClick(&c.chart(), Qt::Key_Return);
    ASSERT_TRUE(c.view().isVisible());
    EXPECT_EQ(c.view().day(), day);
    c.go(0);
    QTest::keyClick(c.session().table(), Qt::Key_Return);
    ASSERT_TRUE(c.chart().isVisible());
    EXPECT_EQ(c.chart().selected(), 4);
}

TEST(LogbookView, ASearchThatFindsNothingSaysSoAndEscapeTakesItAway)
{
    LogbookCase c;
    c.page->perform(QStringLiteral("lifter.find"));
    QTest::keyClicks(c.search(), QStringLiteral("snatch"));
    EXPECT_TRUE(c.says(QStringLiteral("0 of 6 session(s)")));
    QTest::keyClick(c.search(), Qt::Key_Escape);
    EXPECT_TRUE(c.view().isVisible());
    EXPECT_TRUE(c.says(QStringLiteral("6 session(s)")));
}

TEST(LogbookView, OneSessionIsEnoughToWorkWith)
{
    LogbookCase c(1);
    EXPECT_EQ(c.rows().rowCount(), 6);
    QTest::keyClick(&c.calendar(), Qt::Key_PageUp);
    EXPECT_EQ(c.view().day(), QDate(2026, 11, 20));
}

TEST(LogbookView, ListsAndFindsSixHundredSessions)
{
    LogbookCase c(1);
    auto tx = must(Transaction::begin(c.club.book->database()));
    const auto logbook = c.club.book->logbook();
    const auto line = must(logbook.lines(*c.club.athlete)).front().id;
    const QDate today = c.club.clock.today();
    for (int i = 1; i < 600; ++i) {
        const auto session = must(logbook.session(tx, *c.club.athlete, today.addDays(-2 * i)));
        SetEntry set;
        set.load = *Load::parse(u"40", MassUnit::kg);
        set.reps = 8;
        if (i == 400) set.note = QStringLiteral("first day with the belt");
        (void)must(logbook.insert(tx, *c.club.athlete, {session, line, 1, set}));
    }
    ASSERT_TRUE(tx.commit());
    Changes changes;
    changes.athletes.insert(*c.club.athlete);
    c.page->bookChanged(changes);
    ASSERT_TRUE(c.waitFor([&] { return c.says(QStringLiteral("600 session(s).")); }));
    QTest::keyClick(&c.calendar(), Qt::Key_Home);
    EXPECT_EQ(c.view().day(), today.addDays(-2 * 599));
    EXPECT_TRUE(c.calendar().viewport()->rect().contains(c.calendar().placeOf(c.view().day())));
    c.search()->setText(QStringLiteral("belt"));
    EXPECT_TRUE(c.says(QStringLiteral("1 of 600 session(s)")));
    QTest::keyClick(c.search(), Qt::Key_Return);  // goes to what was found
    EXPECT_EQ(c.view().day(), today.addDays(-800));
}

TEST(LogbookBulk, SaysWhatIsInTheWayAndEnterThenDoesNothing)
{
    LogbookCase c;
    c.page->perform(QStringLiteral("lifter.bulk"));
    ASSERT_TRUE(c.bulk().isVisible());
    EXPECT_TRUE(c.says(QStringLiteral("They stand on this line already")));
    QTest::keyClick(&c.field<QComboBox>(QStringLiteral("What")), Qt::Key_Return);
    EXPECT_TRUE(c.bulk().isVisible());
    QTest::keyClick(&c.field<QComboBox>(QStringLiteral("What")), Qt::Key_Escape);
    EXPECT_TRUE(c.session().isVisible());
    EXPECT_TRUE(c.view().isVisible());
    EXPECT_EQ(c.dump(), c.first);
}

TEST(LogbookBulk, SplitsALineAtTheChosenDayIntoANewStandard)
{
    LogbookCase c(12);
    QTest::keyClick(&c.calendar(), Qt::Key_Left);
    QTest::keyClick(&c.calendar(), Qt::Key_Left);
    c.page->perform(QStringLiteral("lifter.bulk"));
    auto& standard = c.field<QComboBox>(QStringLiteral("Standard then"));
    standard.lineEdit()->selectAll();
    QTest::keyClicks(standard.lineEdit(), QStringLiteral("paused"));
    EXPECT_TRUE(c.says(QStringLiteral("9 set(s) of 3 session(s).")));
    EXPECT_TRUE(c.says(QStringLiteral("“paused” becomes a standard of this lifter")));
    EXPECT_EQ(c.preview(0, 2), QStringLiteral("9 session(s),\n27 set(s)"));
    EXPECT_TRUE(c.preview(1, 0).endsWith(QStringLiteral("paused")));
    EXPECT_EQ(c.preview(1, 1), QStringLiteral("nothing"));
    QTest::keyClick(standard.lineEdit(), Qt::Key_Return);
    EXPECT_TRUE(c.session().isVisible());
    EXPECT_EQ(must(c.club.book->logbook().lines(*c.club.athlete)).size(), 2u);
    ASSERT_TRUE(c.settled());
    c.undoAll();
}

TEST(LogbookBulk, ShiftsAStretchOfSessionsAndShowsEachBeforeAndAfter)
{
    LogbookCase c;
    QTest::keyClick(&c.calendar(), Qt::Key_Home);
    const QDate oldest = c.view().day();
    c.page->perform(QStringLiteral("lifter.bulk"));
    c.field<QComboBox>(QStringLiteral("What")).setCurrentIndex(LogbookBulk::Shift);
    auto& days = c.field<QSpinBox>(QStringLiteral("By days"));
    EXPECT_TRUE(c.says(QStringLiteral("By how many days?")));
    days.setValue(1);
    EXPECT_TRUE(c.says(QStringLiteral("is yet to come")));
    days.setValue(-2);
    EXPECT_TRUE(c.says(QStringLiteral("To another day: 6 session(s).")));
    EXPECT_NE(c.preview(0, 1), c.preview(0, 2));
    QTest::keyClick(&days, Qt::Key_Return);
    EXPECT_TRUE(c.waitFor([&] { return c.says(QStringLiteral("6 session(s).")); }));
    ASSERT_TRUE(c.settled());
    EXPECT_TRUE(c.waitFor([&] {
        c.search()->setText(oldest.addDays(-2).toString(Qt::ISODate));
        return c.says(QStringLiteral("1 of 6 session(s)"));
    }));
    c.undoAll();
}

TEST(LogbookBulk, RenamesInTheLibraryAndRefusesNamesThatAreTaken)
{
    LogbookCase c;
    c.club.addLine(QStringLiteral("Row"), 2);
    c.first = c.dump();
    ASSERT_TRUE(c.settled());
    c.page->perform(QStringLiteral("lifter.bulk"));
    c.field<QComboBox>(QStringLiteral("What")).setCurrentIndex(LogbookBulk::Rename);
    auto& name = c.field<QLineEdit>(QStringLiteral("New name"));
    EXPECT_TRUE(c.says(QStringLiteral("A name is needed")));
    const QString other = c.field<QComboBox>(QStringLiteral("Line")).currentText().startsWith(QStringLiteral("Row"))
                              ? QStringLiteral("Arm curl")
                              : QStringLiteral("Row");
    QTest::keyClicks(&name, other);
    EXPECT_TRUE(c.says(QStringLiteral("Another one has this name")));
    name.clear();
    QTest::keyClicks(&name, QStringLiteral("Elbow bend"));
    EXPECT_TRUE(c.says(QStringLiteral("1 lift line(s) of 1 lifter(s)")));
    QTest::keyClick(&name, Qt::Key_Return);
    EXPECT_TRUE(c.session().isVisible());
    EXPECT_NE(c.dump(), c.first);
    ASSERT_TRUE(c.settled());
    c.undoAll();
}

}  // namespace
}  // namespace steelyard
