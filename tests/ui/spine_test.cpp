// The whole way through, on the window, with the rules and readings that a coach gets: review, decision, chart, sheet.
#include "tests/support/club_window.h"
#include "ui/charts/progress_chart.h"
#include "ui/pages/floor/floor_page.h"
#include "ui/pages/lifter/lifter_page.h"
#include "ui/pages/lifter/why_view.h"

#include <QtCore/QProcess>
#include <QtWidgets/QTableView>

namespace steelyard {
namespace {

class Spine : public testing_support::ClubWindow {
protected:
    Spine() : ClubWindow({.athletes = 5, .years = 1, .seed = 3}) {}
};

TEST_F(Spine, LeadsByKeysFromTheReviewToADecisionAChartAndASheet)
{
    // The worst lifter is in front, with at least one flag that belongs to a line.
    ASSERT_TRUE(window.view()->roster()->chosen());
    const Id<Athlete> lifter = *window.view()->roster()->chosen();
    ASSERT_FALSE(chosenReview().flags.empty());
    const std::size_t before = chosenReview().flags.size();

    // D, a reason, Enter: the decision is stored, and the review that follows counts the flag as answered.
    press(Qt::Key_D);
    QTest::keyClicks(window.focusWidget(), QStringLiteral("new shoes that day"));
    press(Qt::Key_Return);
    const auto stored = window.book()->decisions().of(lifter);
    ASSERT_TRUE(stored);
    EXPECT_TRUE(std::ranges::any_of(*stored, [](const auto& row) {
        return row.value.reason == QStringLiteral("new shoes that day") && row.value.severity
               && !row.value.said.isEmpty();
    }));
    ASSERT_TRUE(QTest::qWaitFor([&] { return window.isSettled() && chosenReview().flags.size() < before; }, 30000));
    EXPECT_TRUE(std::ranges::any_of(chosenReview().answered, [](const auto& answered) {
        return answered.decision.reason == QStringLiteral("new shoes that day");
    }));

    // J until a flag has a line, then O: its chart, with the decision's line in front and drawn sessions.
    const auto& flags = chosenReview().flags;
    const auto withLine = std::ranges::find_if(flags, [](const Flag& flag) { return flag.line.has_value(); });
    ASSERT_NE(withLine, flags.end());
    const Id<LiftLine> line = *withLine->line;
    for (auto at = flags.begin(); at != withLine; ++at) press(Qt::Key_J);
    press(Qt::Key_O);
    ASSERT_EQ(window.view()->currentPage()->key(), QStringLiteral("lifter"));
    auto* chart = window.view()->findChild<ProgressChart*>();
    ASSERT_TRUE(QTest::qWaitFor([&] { return window.isSettled() && !chart->spec().table.rows.empty(); }, 30000));
    const auto shown = std::ranges::find(chosenReview().lines, line, &LineReview::id);
    ASSERT_NE(shown, chosenReview().lines.end());
    EXPECT_TRUE(chart->spec().summary.contains(shown->exercise)) << qPrintable(chart->spec().summary);
    EXPECT_FALSE(chart->spec().reps.points.empty());

    // Ctrl+4 and Ctrl+Shift+P: the floor on a day this lifter trains, saved as a PDF that names them.
    press(Qt::Key_4, Qt::ControlModifier);
    auto* floor = qobject_cast<FloorPage*>(window.view()->currentPage());
    ASSERT_NE(floor, nullptr);
    ASSERT_TRUE(QTest::qWaitFor([&] { return floor->isSettled(); }, 30000));
    for (int day = 0; day < 7 && floor->chosenSheets().empty(); ++day) {
        press(Qt::Key_BracketRight);
        ASSERT_TRUE(QTest::qWaitFor([&] { return floor->isSettled(); }, 30000));
    }
    ASSERT_FALSE(floor->chosenSheets().empty());
    prompter.path = dir.path(u"sheets.pdf");
    press(Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(prompter.errors, QStringList());
    QProcess text;
    text.start(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), prompter.path, QStringLiteral("-")});
    ASSERT_TRUE(text.waitForFinished());
    const QString words = QString::fromUtf8(text.readAllStandardOutput());
    for (const SessionSheet& sheet : floor->chosenSheets())
        EXPECT_TRUE(words.contains(sheet.athlete)) << qPrintable(sheet.athlete);
}

TEST_F(Spine, LeadsFromTheWeekToTheSetsBehindAVerdictAndBackToTheChart)
{
    press(Qt::Key_G);
    press(Qt::Key_Y, Qt::ShiftModifier);
    ASSERT_EQ(window.view()->currentPage()->key(), QStringLiteral("lifter"));
    auto* why = window.view()->findChild<WhyView*>();
    ASSERT_TRUE(QTest::qWaitFor([&] { return why->isVisible() && why->table()->model()->rowCount() > 0; }, 30000));
    press(Qt::Key_Escape);
    EXPECT_FALSE(why->isVisible());
    EXPECT_TRUE(window.view()->findChild<ProgressChart*>()->isVisible());
    press(Qt::Key_Y);
    EXPECT_TRUE(why->isVisible());
    // Who opens a line from the week comes for its chart, whatever was open before.
    press(Qt::Key_1, Qt::ControlModifier);
    press(Qt::Key_O);
    EXPECT_FALSE(why->isVisible());
}

}  // namespace
}  // namespace steelyard
