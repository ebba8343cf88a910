#include "ui/pages/lifter/lifter_page.h"

#include "tests/support/lifter_page_book.h"
#include "ui/charts/progress_chart.h"
#include "ui/format/format.h"
#include "ui/pages/lifter/decision_model.h"
#include "ui/pages/lifter/decisions_view.h"
#include "ui/pages/lifter/line_list_model.h"
#include "ui/pages/lifter/session_panel.h"
#include "ui/pages/lifter/why_view.h"

#include <QtTest/QAbstractItemModelTester>
#include <QtTest/QTest>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListView>
#include <QtWidgets/QTableView>

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

using testing_support::LifterBook;
using testing_support::must;

struct LifterPageCase : testing_support::LifterPageBook {
    ~LifterPageCase()
    {
        EXPECT_EQ(prompter.asked + prompter.errors, QStringList()) << "the Lifter page never stops to ask";
    }

    [[nodiscard]] QListView& list() const { return *page->findChild<QListView*>(); }
    [[nodiscard]] SessionPanel& panel() const { return *page->findChild<SessionPanel*>(); }
    [[nodiscard]] WhyView& why() const { return *page->findChild<WhyView*>(); }
    [[nodiscard]] bool explained() const
    {
        return QTest::qWaitFor([this] { return why().isVisible() && why().table()->model()->rowCount() > 0; }, 10000);
    }
};

TEST(LifterPage, InvitesToChooseALifterFirst)
{
    LifterPageCase c;
    c.club.athlete.reset();
    c.open();
    EXPECT_TRUE(c.says(QStringLiteral("Choose a lifter")));
    EXPECT_FALSE(c.page->canPerform(QStringLiteral("lifter.copy")));
}

TEST(LifterPage, SaysWhatToDoWhenNothingIsLogged)
{
    LifterPageCase c;
    c.open();
    EXPECT_TRUE(QTest::qWaitFor([&] { return c.says(QStringLiteral("Nothing is logged for Dana Quill")); }, 10000));
}

TEST(LifterPage, ShowsOneExposureWithoutATrend)
{
    LifterPageCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 1);
    c.open();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !c.chart().spec().empty(); }, 10000));
    EXPECT_EQ(c.chart().spec().reps.points.size(), 1u);
    EXPECT_TRUE(c.chart().spec().trend.empty());
    EXPECT_EQ(c.chart().selected(), 0);
    EXPECT_TRUE(c.says(format::verdictWord(Verdict::CantTell)));
}

TEST(LifterPage, ShowsVerdictReasonAndNewestSessionOfALine)
{
    LifterPageCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 24);
    c.open();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !c.chart().spec().empty(); }, 10000));
    EXPECT_EQ(c.chart().spec().reps.points.size(), 24u);
    EXPECT_EQ(c.chart().selected(), 23);
    EXPECT_EQ(c.panel().table()->model()->rowCount(), 3);
    EXPECT_TRUE(c.says(QStringLiteral("Arm curl, straight bar, upright")));
}

TEST(LifterPage, KeysOnTheChartStepThroughTheLines)
{
    LifterPageCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 4);
    c.club.addLine(QStringLiteral("Row"), 5);
    c.open();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !c.chart().spec().empty(); }, 10000));
    EXPECT_EQ(c.list().model()->rowCount(), 4);  // two headings, two lines
    QTest::keyClick(&c.chart(), Qt::Key_BracketLeft);
    EXPECT_EQ(c.chart().spec().reps.points.size(), 4u);
    QTest::keyClick(&c.chart(), Qt::Key_BracketRight);
    EXPECT_EQ(c.chart().spec().reps.points.size(), 5u);
}

TEST(LifterPage, CorrectsASetInPlaceKeepsWhatItSaidAndCanUndo)
{
    LifterPageCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 3);
    c.open();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !c.chart().spec().empty(); }, 10000));
    QAbstractItemModel* sets = c.panel().table()->model();
    const QString before = sets->index(0, SetTableModel::Reps).data().toString();
    ASSERT_TRUE(sets->setData(sets->index(0, SetTableModel::Reps), QStringLiteral("11"), Qt::EditRole));
    ASSERT_TRUE(QTest::qWaitFor([&] { return sets->index(0, SetTableModel::Reps).data().toString() == u"11"; }, 10000));
    EXPECT_TRUE(c.panel().historyText().contains(QStringLiteral("× ") + before))
        << c.panel().historyText().toStdString();
    ASSERT_TRUE(c.club.book->history().undo());
    EXPECT_TRUE(
        QTest::qWaitFor([&] { return sets->index(0, SetTableModel::Reps).data().toString() == before; }, 10000));
}

TEST(LifterPage, RefusesWhatCannotBeReadAndLeavesTheSet)
{
    LifterPageCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 2);
    c.open();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !c.chart().spec().empty(); }, 10000));
    QAbstractItemModel* sets = c.panel().table()->model();
    EXPECT_FALSE(sets->setData(sets->index(0, SetTableModel::LoadColumn), QStringLiteral("heavy"), Qt::EditRole));
    EXPECT_TRUE(c.says(QStringLiteral("“heavy” can't be read")));
    EXPECT_FALSE(sets->setData(sets->index(0, SetTableModel::Off), QStringLiteral("99"), Qt::EditRole));
    EXPECT_TRUE(c.says(QStringLiteral("stays as it was")));
}

TEST(LifterPage, WhyOpensInPlaceAndEscapeGoesBackToWhereItWas)
{
    LifterPageCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 16);
    c.open();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !c.chart().spec().empty(); }, 10000));
    c.page->activateWindow();
    c.page->takeFocus();
    c.chart().select(13);
    c.page->perform(QStringLiteral("lifter.why"));
    ASSERT_TRUE(c.explained());
    EXPECT_FALSE(c.chart().isVisible());
    EXPECT_FALSE(c.why().decision().isEmpty());
    auto& model = *qobject_cast<WhyModel*>(c.why().table()->model());
    EXPECT_EQ(model.exposureAt(c.why().table()->currentIndex().row()), 13);  // the session that was looked at
    c.why().table()->setCurrentIndex(model.index(0, 0));
    EXPECT_EQ(c.panel().table()->model()->rowCount(), 3);
    QTest::keyClick(c.why().table(), Qt::Key_Escape);
    EXPECT_TRUE(c.chart().isVisible());
    EXPECT_FALSE(c.why().isVisible());
    EXPECT_EQ(c.chart().selected(), 13);
    EXPECT_EQ(c.page->focusWidget(), &c.chart());
}

TEST(LifterPage, EnterInTheWhyViewGoesToTheSessionOnTheChart)
{
    LifterPageCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 16);
    c.open();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !c.chart().spec().empty(); }, 10000));
    c.page->perform(QStringLiteral("lifter.why"));
    ASSERT_TRUE(c.explained());
    const auto& model = *qobject_cast<WhyModel*>(c.why().table()->model());
    c.why().table()->setCurrentIndex(model.index(model.rowOfExposure(9), 0));
    QTest::keyClick(c.why().table(), Qt::Key_Return);
    EXPECT_TRUE(c.chart().isVisible());
    EXPECT_EQ(c.chart().selected(), 9);
}

TEST(LifterPage, WhyFollowsTheLineAndIsKeptForTheNextOne)
{
    LifterPageCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 4);
    c.club.addLine(QStringLiteral("Row"), 6);
    c.open();
    ASSERT_TRUE(QTest::qWaitFor([&] { return c.chart().spec().reps.points.size() == 6; }, 10000));
    c.page->perform(QStringLiteral("lifter.why"));
    ASSERT_TRUE(c.explained());
    EXPECT_EQ(c.why().table()->model()->rowCount(), 6 * 4);  // three sets and what they say together
    c.page->perform(QStringLiteral("lifter.previousLine"));
    EXPECT_TRUE(QTest::qWaitFor([&] { return c.why().table()->model()->rowCount() == 4 * 4; }, 10000));
    EXPECT_TRUE(c.why().isVisible());
    c.page->perform(QStringLiteral("lifter.why"));
    EXPECT_TRUE(c.chart().isVisible());
}

TEST(LifterPage, ListsDecisionsWithWhatFollowedAndEnterGoesToTheSessionTheyWereMadeOn)
{
    LifterPageCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 24);
    c.club.addLine(QStringLiteral("Row"), 30);
    const Book& book = *c.club.book;
    Decision decision{*c.club.athlete, must(book.logbook().lines(*c.club.athlete)).front().id,
                      QStringLiteral("stalled")};
    decision.kind = DecisionKind::Dismiss;
    decision.madeOn = QDate(2026, 10, 12);
    decision.reason = QStringLiteral("two weeks of travel");
    decision.said = QStringLiteral("No gain for five weeks.");
    (void)must(c.club.book->history().perform(makeDecision(decision, QStringLiteral("stalled"))));
    c.open();
    ASSERT_TRUE(QTest::qWaitFor([&] { return c.chart().spec().reps.points.size() == 30; }, 10000));
    c.page->perform(QStringLiteral("lifter.decisions"));
    auto* table = c.page->findChild<DecisionsView*>()->findChild<QTableView*>();
    ASSERT_TRUE(table->isVisible());
    ASSERT_EQ(table->model()->rowCount(), 1);
    const auto cell = [&](int column, int role = Qt::DisplayRole) {
        return table->model()->index(0, column).data(role).toString();
    };
    EXPECT_EQ(cell(1), QStringLiteral("Stalled"));
    EXPECT_TRUE(cell(1, DecisionModel::DetailRole).startsWith(QStringLiteral("Arm curl")));
    EXPECT_TRUE(cell(2).contains(QStringLiteral("two weeks of travel")));
    EXPECT_EQ(cell(2, DecisionModel::DetailRole), decision.said);
    EXPECT_TRUE(cell(3).contains(QStringLiteral(" to "))) << cell(3).toStdString();
    EXPECT_TRUE(c.page->canPerform(QStringLiteral("lifter.copy")));
    QTest::keyClick(table, Qt::Key_Return);
    EXPECT_TRUE(c.chart().isVisible());
    EXPECT_EQ(c.chart().spec().reps.points.size(), 24u);
    const auto& chosen = c.chart().spec().reps.points[static_cast<std::size_t>(c.chart().selected())];
    EXPECT_LE(chosen.date, decision.madeOn);
    EXPECT_GT(chosen.date, decision.madeOn.addDays(-5));
}

TEST(LifterPage, SaysWhatDecisionsAreForWhenThereAreNone)
{
    LifterPageCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 4);
    c.open();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !c.chart().spec().empty(); }, 10000));
    c.page->perform(QStringLiteral("lifter.decisions"));
    EXPECT_TRUE(c.says(QStringLiteral("No decision about Dana Quill so far")));
    EXPECT_FALSE(c.page->canPerform(QStringLiteral("lifter.copy")));
    QTest::keyClick(c.page->findChild<DecisionsView*>(), Qt::Key_Escape);
    EXPECT_TRUE(c.chart().isVisible());
}

TEST(LifterPage, WhyAskedForWhileTheRecordIsReadOpensWhenItHasCome)
{
    LifterPageCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 6);
    c.open();
    ASSERT_TRUE(c.page->canPerform(QStringLiteral("lifter.why")));
    c.page->perform(QStringLiteral("lifter.why"));
    EXPECT_TRUE(c.explained());
}

TEST(LifterPage, IsQuietWhenItIsClosedWhileReading)
{
    LifterPageCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 30);
    c.open();
    c.close();
    EXPECT_TRUE(c.settled());
}

TEST(LineListModel, KeepsTheRulesOfItemModels)
{
    LifterBook club{QDate(2026, 11, 20)};
    const LiftLine line = club.addLine(QStringLiteral("Arm curl"), 8);
    const LifterReading reading = must(readLifter(club.book->path(), line.athlete, club.clock.today(), Progress()));
    LineListModel model;
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.setReading(&reading);
    ASSERT_EQ(model.rowCount(), 2);
    EXPECT_FALSE(model.flags(model.index(0)) & Qt::ItemIsSelectable);
    EXPECT_EQ(model.rowOf(reading.log.lines[0].id), 1);
    EXPECT_EQ(model.step(1, 1), 1);
    EXPECT_EQ(model.step(1, -1), 1);
}

TEST(SetTableModel, ReadsLoadsWithACommaAndWithTheirUnit)
{
    SetEntry set;
    set.load = *Load::parse(u"40", MassUnit::kg);
    set.reps = 8;
    SetTableModel model;
    model.setSets({{Id<SetEntry>(1), 1, set}}, true);
    std::vector<SetEntry> wanted;
    QObject::connect(&model, &SetTableModel::changeWanted, &model,
                     [&](Id<SetEntry>, const SetEntry& changed) { wanted.push_back(changed); });
    const auto type = [&](int column, const char* text) {
        return model.setData(model.index(0, column), QString::fromUtf8(text), Qt::EditRole);
    };
    EXPECT_TRUE(type(SetTableModel::LoadColumn, "42,5"));
    EXPECT_TRUE(type(SetTableModel::LoadColumn, "95 lb"));
    EXPECT_TRUE(type(SetTableModel::Off, "0"));
    EXPECT_TRUE(type(SetTableModel::EffortColumn, "RPE 8.5"));
    ASSERT_EQ(wanted.size(), 4u);
    EXPECT_EQ(wanted[0].load.toString(), QStringLiteral("42.5 kg"));
    EXPECT_EQ(wanted[1].load.toString(), QStringLiteral("95 lb"));
    EXPECT_EQ(wanted[2].off, 0);
    EXPECT_EQ(wanted[3].effort, (Effort{Effort::Scale::Rpe, *Decimal::parse(u"8.5")}));
}

TEST(SetTableModel, TellsNotWatchedFromWatchedAndFine)
{
    SetEntry set;
    set.reps = 8;
    SetTableModel model;
    model.setSets({{Id<SetEntry>(1), 1, set}}, false);
    EXPECT_EQ(model.index(0, SetTableModel::Off).data().toString(), QStringLiteral("not watched"));
    set.off = 0;
    model.setSets({{Id<SetEntry>(1), 1, set}}, false);
    EXPECT_EQ(model.index(0, SetTableModel::Off).data().toString(), QStringLiteral("0"));
    EXPECT_FALSE(model.flags(model.index(0, SetTableModel::Off)) & Qt::ItemIsEditable);
}

}  // namespace
}  // namespace steelyard
