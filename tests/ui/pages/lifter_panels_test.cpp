// The views of panels on the Lifter page: what their keys open, what they say when there is nothing, and lifters side by side.
#include "core/edits/edits.h"
#include "tests/support/lifter_page_book.h"
#include "ui/charts/panels_chart.h"
#include "ui/pages/lifter/compare_view.h"
#include "ui/pages/lifter/curve_view.h"
#include "ui/pages/lifter/lifter_page.h"
#include "ui/pages/lifter/ratings_view.h"
#include "ui/pages/lifter/same_line.h"
#include "ui/pages/lifter/session_panel.h"
#include "ui/pages/lifter/training_view.h"
#include "ui/shell/actions.h"

#include <QtTest/QTest>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QRadioButton>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::must;

struct PanelsCase : testing_support::LifterPageBook {
    void openSettled()
    {
        open();
        EXPECT_TRUE(settled());
    }
    template <class View>
    View& perform(const QString& action)
    {
        EXPECT_TRUE(findAction(action));
        EXPECT_TRUE(page->canPerform(action));
        page->perform(action);
        EXPECT_TRUE(settled());
        auto* view = page->findChild<View*>();
        EXPECT_TRUE(view->isVisible());
        return *view;
    }
    template <class View>
    [[nodiscard]] static PanelsChart& chartOf(const View& view)
    {
        return *view.template findChild<PanelsChart*>();
    }
    // Another lifter, who trains the line too.
    void addLifter(const QString& name, LiftLine line, int sessions)
    {
        Athlete lifter;
        lifter.name = name;
        (void)must(club.book->history().perform(addAthlete(lifter)));
        line.athlete = must(club.book->athletes().findByName(name)).id;
        for (int i = 0; i < sessions; ++i) club.addSession(line, club.clock.today().addDays(-4 * (sessions - i)), i);
    }
};

TEST(LifterPanels, TrainingShowsWeeksAndTheReadOutFollowsTheKeys)
{
    PanelsCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 12);
    c.openSettled();
    const auto& view = c.perform<TrainingView>(QStringLiteral("lifter.training"));
    PanelsChart& chart = c.chartOf(view);
    ASSERT_GE(chart.spec().stops.size(), 5u);
    EXPECT_FALSE(c.page->findChild<SessionPanel*>()->isVisible());
    EXPECT_TRUE(chart.hasFocus());
    QTest::keyClick(&chart, Qt::Key_Home);
    EXPECT_TRUE(c.says(chart.spec().stops.front().words));
    EXPECT_TRUE(c.says(QStringLiteral("Foster 1998")));
    EXPECT_TRUE(c.page->canPerform(QStringLiteral("lifter.copy")));
    c.page->perform(QStringLiteral("lifter.progress"));
    EXPECT_TRUE(c.page->findChild<SessionPanel*>()->isVisible());
}

TEST(LifterPanels, RatingsStandAtTheSessionThatWasLookedAtAndCarryTheCaution)
{
    PanelsCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 12);
    c.openSettled();
    const auto& view = c.perform<RatingsView>(QStringLiteral("lifter.ratings"));
    PanelsChart& chart = c.chartOf(view);
    EXPECT_EQ(chart.selected(), 11);
    EXPECT_TRUE(c.says(QStringLiteral("see a licensed professional")));
    EXPECT_EQ(view.table().rows.size(), 12u);
}

TEST(LifterPanels, TheCurveIsSaidFromSetsAtTwoLoads)
{
    PanelsCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 24);
    c.openSettled();
    const auto& view = c.perform<CurveView>(QStringLiteral("lifter.curve"));
    PanelsChart& chart = c.chartOf(view);
    ASSERT_EQ(chart.spec().stops.size(), 2u);  // 40 and 42.5
    EXPECT_TRUE(c.page->canPerform(QStringLiteral("lifter.chart")));
    EXPECT_EQ(view.table().rows.size(), chart.spec().table.rows.size());
}

TEST(LifterPanels, TheCurveSaysWhatItNeedsWhenItCannotBeSaid)
{
    PanelsCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 2);
    c.openSettled();
    const auto& view = c.perform<CurveView>(QStringLiteral("lifter.curve"));
    EXPECT_TRUE(c.says(QStringLiteral("No curve can be said")));
    EXPECT_TRUE(view.table().rows.empty());
    EXPECT_FALSE(c.page->canPerform(QStringLiteral("lifter.chart")));
}

TEST(LifterPanels, CompareTakesTheLinesOfTheExerciseAndMoreOnRequest)
{
    PanelsCase c;
    c.club.addLine(QStringLiteral("Arm curl"), 14);
    c.club.addLine(QStringLiteral("Row"), 14);
    c.openSettled();
    const auto& view = c.perform<CompareView>(QStringLiteral("lifter.compare"));
    auto* list = view.findChild<QListWidget*>();
    ASSERT_EQ(list->count(), 2);
    EXPECT_EQ(list->item(0)->checkState(), Qt::Checked);
    EXPECT_EQ(list->item(1)->checkState(), Qt::Unchecked);
    PanelsChart& chart = c.chartOf(view);
    EXPECT_EQ(chart.spec().panels[0].series.size(), 1u);
    list->item(1)->setCheckState(Qt::Checked);
    EXPECT_EQ(chart.spec().panels[0].series.size(), 2u);
    list->item(0)->setCheckState(Qt::Unchecked);
    list->item(1)->setCheckState(Qt::Unchecked);
    EXPECT_TRUE(c.says(QStringLiteral("Tick at the left")));
}

TEST(LifterPanels, CompareShowsTheLineAcrossLiftersAndSaysWhatThatDoesNotMean)
{
    PanelsCase c;
    const LiftLine line = c.club.addLine(QStringLiteral("Arm curl"), 14);
    c.addLifter(QStringLiteral("Rory Tare"), line, 12);
    c.addLifter(QStringLiteral("Sol Drachm"), line, 10);
    c.openSettled();
    const auto& view = c.perform<CompareView>(QStringLiteral("lifter.compare"));
    view.findChildren<QRadioButton*>().last()->click();
    ASSERT_TRUE(c.settled());
    auto* list = view.findChild<QListWidget*>();
    ASSERT_EQ(list->count(), 3);
    EXPECT_EQ(list->item(0)->text(), QStringLiteral("Dana Quill"));
    EXPECT_EQ(c.chartOf(view).spec().panels[0].series.size(), 3u);
    EXPECT_TRUE(c.says(QStringLiteral("nothing of who is better")));
}

TEST(LifterPanels, CompareTakesALineApartByRepetitions)
{
    PanelsCase c;
    const LiftLine line = c.club.addLine(QStringLiteral("Arm curl"), 14);
    c.club.addLine(QStringLiteral("Row"), 14);
    QDate usual = c.club.clock.today().addDays(-(7 * 13) / 2);
    QDate day = usual.addDays(-7 * 6);
    for (int i = 0; i < 12; ++i, day = day.addDays(i % 2 ? 3 : 4), usual = usual.addDays(i % 2 ? 3 : 4)) {
        SetEntry set;
        set.load = *Load::parse(u"25", MassUnit::kg);
        set.reps = 15 + i / 3;
        set.off = 0;
        set.effort = Effort{Effort::Scale::Rir, Decimal(1)};
        (void)must(c.club.book->history().perform(addSet(line, day, set)));
        ExerciseRating rating;
        rating.tension = 4 + i % 3;
        for (const QDate date : {day, usual})
            (void)must(c.club.book->history().perform(rateExercise(line, date, rating)));
    }
    c.openSettled();
    const auto& view = c.perform<CompareView>(QStringLiteral("lifter.compare"));
    auto* bands = view.findChildren<QRadioButton*>()[1];
    bands->click();
    ASSERT_TRUE(c.settled());
    auto* list = view.findChild<QListWidget*>();
    ASSERT_EQ(list->count(), 2);
    EXPECT_TRUE(list->item(0)->text().startsWith(QStringLiteral("7–12 repetitions, 14 session")));
    EXPECT_TRUE(list->item(1)->text().startsWith(QStringLiteral("13–20 repetitions, 12 session")));
    EXPECT_EQ(c.chartOf(view).spec().panels[0].series.size(), 2u);
    EXPECT_TRUE(c.says(QStringLiteral("No band is best for everyone")));
    view.findChildren<QCheckBox*>().first()->click();
    EXPECT_TRUE(c.says(QStringLiteral("nobody drew lots"))) << "how each band felt";
    view.findChildren<QRadioButton*>().first()->click();
    EXPECT_EQ(list->count(), 2);
    EXPECT_TRUE(list->item(0)->text().contains(QStringLiteral("Arm curl"))) << qPrintable(list->item(0)->text());
}

TEST(SameLine, ReadsOnlyThoseWhoTrainItAndStopsWhenAsked)
{
    PanelsCase c;
    const LiftLine line = c.club.addLine(QStringLiteral("Arm curl"), 8);
    c.addLifter(QStringLiteral("Rory Tare"), line, 8);
    c.addLifter(QStringLiteral("Sol Drachm"), c.club.addLine(QStringLiteral("Row"), 3), 8);
    double share = 0;
    const auto found =
        readSameLine(c.club.book->path(), line, c.club.clock.today(), Progress([&](double s) { share = s; }));
    ASSERT_TRUE(found);
    ASSERT_EQ(found->size(), 2u);
    EXPECT_EQ(share, 1);
    EXPECT_FALSE(found->front().compared.trend.empty());
    std::stop_source stop;
    stop.request_stop();
    const auto stopped = readSameLine(c.club.book->path(), line, c.club.clock.today(), Progress({}, stop.get_token()));
    ASSERT_FALSE(stopped);
    EXPECT_EQ(stopped.error().code, ErrorCode::Cancelled);
}

}  // namespace
}  // namespace steelyard
