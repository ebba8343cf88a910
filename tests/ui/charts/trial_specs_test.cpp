// The charts of a trial as values: what is drawn where, from effects that are made up.
#include "core/trials/trial_outcomes.h"
#include "ui/charts/everyday_spec.h"
#include "ui/charts/trial_course_spec.h"
#include "ui/charts/trial_difference_spec.h"
#include "ui/charts/trial_power_spec.h"
#include "ui/charts/trial_wins_spec.h"
#include "ui/format/trial_words.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

const QDate kFirstDay(2027, 3, 1);
const std::vector<QString> kArms{QStringLiteral("supinated"), QStringLiteral("neutral")};

struct MadeTrial {
    Trial trial{.athlete = Id<Athlete>(1)};
    TrialRecord record;

    // One session of each to get used to it, then four blocks; arm B feels two points better.
    MadeTrial()
    {
        for (int i = 0; i < 2; ++i)
            trial.arms.push_back({.variant = Id<Variant>(1), .grip = Id<Grip>(i + 1), .standard = Id<RepStandard>(1)});
        trial.outcomes = {
            {QStringLiteral("tension"), 0.6}, {QStringLiteral("target_first"), 0.4}, {QStringLiteral("pump"), 0}};
        trial.blocks = 4;
        for (std::size_t i = 0; i < 10; ++i) {
            const std::size_t arm = i % 4 < 2 ? i % 2 : 1 - i % 2;
            const int block = static_cast<int>(i / 2);
            trial.days.push_back({.date = kFirstDay.addDays(3 * static_cast<int>(i)), .block = block, .arm = arm});
            TrialObservation seen{.day = i,
                                  .date = trial.days[i].date,
                                  .block = block,
                                  .drawn = arm,
                                  .done = arm,
                                  .doneOn = trial.days[i].date};
            seen.values = {{QStringLiteral("tension"), (arm == 1 ? 7.0 : 5.0) + static_cast<double>(i % 3)},
                           {QStringLiteral("target_first"), arm == 1 ? 1.0 : 0.0}};
            record.observations.push_back(seen);
        }
        record.asOf = trial.days.back().date;
    }
    [[nodiscard]] TrialEffects effects() const { return trialEffects(trial, record, ArmTaken::Done); }
    [[nodiscard]] PanelsSpec course() const
    {
        const TrialEffects found = effects();
        return buildTrialCourse({trial, record, &found, kArms}, QLocale::c());
    }
};

const PlotPanel& panelCalled(const PanelsSpec& spec, const QString& title)
{
    const auto at =
        std::ranges::find_if(spec.panels, [&](const PlotPanel& panel) { return panel.title.contains(title); });
    if (at == spec.panels.end()) qFatal("no panel %s", qPrintable(title));
    return *at;
}

TEST(TrialCourse, DrawsEverySessionWithTheMarkOfItsArmOnOneScale)
{
    const PanelsSpec spec = MadeTrial().course();
    EXPECT_EQ(spec.stops.size(), 10U);
    const PlotPanel& tension = panelCalled(spec, QStringLiteral("tension"));
    EXPECT_EQ(tension.low, 0);
    EXPECT_EQ(tension.high, 10);
    ASSERT_GE(tension.series.size(), 2U);
    EXPECT_EQ(tension.series[0].points.size(), 5U);
    EXPECT_EQ(tension.series[1].points.size(), 5U);
    EXPECT_NE(tension.series[0].shape, tension.series[1].shape);
    EXPECT_EQ(panelCalled(spec, QStringLiteral("all weighed")).high, 10);
}

TEST(TrialCourse, DrawsHollowWhatDoesNotCount)
{
    MadeTrial made;
    made.record.observations[4].done = 1 - made.record.observations[4].drawn;
    const PanelsSpec spec = made.course();
    int hollow = 0;
    const PlotPanel& tension = panelCalled(spec, QStringLiteral("tension"));
    for (std::size_t arm = 0; arm < 2; ++arm)
        for (const PanelPoint& point : tension.series[arm].points)
            if (point.hollow) ++hollow;
    EXPECT_EQ(hollow, 3) << "two sessions to get used to it, and one with the other arm";
}

TEST(TrialCourse, PutsLevelsWithTheirIntervalsBehindTheSessions)
{
    const MadeTrial made;
    const TrialEffects effects = made.effects();
    const PanelsSpec spec = made.course();
    const PlotPanel& tension = panelCalled(spec, QStringLiteral("tension"));
    const OutcomeEffects& found = *effects.outcome(u"tension");
    int levels = 0;
    for (const PanelSeries& series : tension.series)
        for (const PanelPoint& point : series.points) {
            if (point.x <= 10) continue;
            EXPECT_NEAR(point.y, *found.arms[static_cast<std::size_t>(levels)].level, 1e-9);
            ASSERT_EQ(series.runs.size(), 1U);
            EXPECT_LT(series.runs[0].front().y(), point.y);
            EXPECT_GT(series.runs[0].back().y(), point.y);
            ++levels;
        }
    EXPECT_EQ(levels, 2);
}

TEST(TrialCourse, TellsDiscomfortApartByJointWithTheLimitDrawn)
{
    MadeTrial made;
    made.trial.outcomes.push_back({QStringLiteral("discomfort"), 0});
    made.record.observations[3].discomfort[static_cast<std::size_t>(Joint::Elbow)] = 4;
    made.record.observations[3].discomfort[static_cast<std::size_t>(Joint::Wrist)] = 0;
    const PanelsSpec spec = buildTrialDiscomfort({made.trial, made.record, nullptr, kArms}, QLocale::c());
    ASSERT_EQ(spec.panels.size(), 1U) << "joints rated 0 throughout need no panel";
    EXPECT_TRUE(spec.panels[0].title.contains(QStringLiteral("elbow")));
    ASSERT_FALSE(spec.panels[0].zones.empty());
    EXPECT_TRUE(spec.panels[0].zones[0].label.contains(QString::number(made.trial.limit.rating)));
    EXPECT_LT(spec.panels[0].zones[0].high, made.trial.limit.rating);
    EXPECT_GT(spec.panels[0].zones[0].high, made.trial.limit.rating - 1);
    for (const QString& title : spec.table.header) EXPECT_FALSE(title.contains(QStringLiteral("Tension")));
}

TEST(TrialCourse, IsEmptyBeforeTheFirstSession)
{
    MadeTrial made;
    made.record.observations.clear();
    EXPECT_TRUE(made.course().empty());
}

TEST(TrialDifferences, StandAroundZeroWithChanceAndP)
{
    const MadeTrial made;
    const TrialEffects done = made.effects();
    const TrialEffects drawn = trialEffects(made.trial, made.record, ArmTaken::Drawn);
    const PanelsSpec spec = buildTrialDifferences(done, &drawn, 2, QLocale::c());
    ASSERT_EQ(spec.panels.size(), 1U);
    EXPECT_LT(spec.low, 0);
    EXPECT_EQ(spec.low, -spec.high);
    const double mean = done.answer->differences[0].mean;
    const auto& series = spec.panels[0].series;
    ASSERT_GE(series.size(), 2U);
    EXPECT_NEAR(series[1].points[0].x, std::clamp(mean, spec.low, spec.high), 0.5);
    EXPECT_TRUE(spec.panels[0].ticks[0].label.contains(format::chanceText(done.answer->differences[0].chanceBetter)))
        << qPrintable(spec.panels[0].ticks[0].label);
    EXPECT_TRUE(spec.panels[0].ticks[0].label.contains(QStringLiteral("p ")));
    EXPECT_EQ(spec.table.rows[0].size(), spec.table.header.size());
}

TEST(TrialDifferences, AreHollowWhereTheIntervalReachesOverZero)
{
    TrialEffects effects;
    OutcomeEffects answer;
    answer.arms.resize(2);
    answer.differences = {{.mean = 0.4, .low90 = -0.5, .high90 = 1.3, .chanceBetter = 0.77}};
    effects.answer = answer;
    PanelsSpec spec = buildTrialDifferences(effects, nullptr, 2, QLocale::c());
    EXPECT_TRUE(spec.panels[0].series[1].points[0].hollow);
    effects.answer->differences[0].low90 = 0.1;
    spec = buildTrialDifferences(effects, nullptr, 2, QLocale::c());
    EXPECT_FALSE(spec.panels[0].series[1].points[0].hollow);
}

TEST(TrialPowerChart, SaysMoreForMoreBlocks)
{
    const auto found = [](int blocks) {
        const PanelsSpec spec = buildTrialPower({.arms = 2, .blocks = blocks}, QLocale::c());
        return spec.panels[0].series.back().points[0].y;
    };
    EXPECT_GT(found(12), found(6));
    EXPECT_NEAR(found(6), 10 * trialPower({.arms = 2, .blocks = 6}, 1).prefersRight, 1e-9);
    EXPECT_TRUE(powerSentence({.arms = 2, .blocks = 6}).contains(QStringLiteral("of 10 such trials")));
}

TEST(TrialWinsChart, DrawsAShareWithItsIntervalAndWhatChanceWouldDo)
{
    EXPECT_TRUE(buildTrialWins({}, QLocale::c()).empty());
    ArmWins wins{.kind = QStringLiteral("neutral"), .name = QStringLiteral("neutral"), .trials = 9, .won = 5};
    wins.share = {0.55, 0.3, 0.78};
    wins.byChance = 3;
    const PanelsSpec spec = buildTrialWins({wins}, QLocale::c());
    const auto& series = spec.panels[0].series;
    EXPECT_NEAR(series[0].points[0].x, 500.0 / 9, 1e-9);
    EXPECT_NEAR(series[0].runs[0][0].x(), 30, 1e-9);
    EXPECT_NEAR(series.back().points[0].x, 100.0 / 3, 1e-9);
    EXPECT_TRUE(series.back().points[0].hollow);
}

TEST(EverydayChart, NeverCallsItselfATrialAndNamesWhatElseDiffered)
{
    EverydayComparison found;
    found.sentence = QStringLiteral("Nobody drew lots.");
    found.circumstances.push_back(
        {Circumstance::Time, {0, 90}, QStringLiteral("One was trained in spring, one in autumn.")});
    OutcomeEffects tension;
    tension.key = QStringLiteral("tension");
    tension.arms = {{.sessions = 5, .mean = 6, .level = 6, .low90 = 5, .high90 = 7},
                    {.sessions = 4, .mean = 8, .level = 8, .low90 = 7, .high90 = 9}};
    found.outcomes.push_back(tension);
    const PanelsSpec spec = buildEveryday(found, kArms, QLocale::c());
    EXPECT_TRUE(spec.summary.contains(QStringLiteral("not a trial")));
    EXPECT_TRUE(spec.summary.contains(QStringLiteral("in spring")));
    ASSERT_EQ(spec.panels.size(), 1U);
    for (const PanelSeries& series : spec.panels[0].series) EXPECT_TRUE(series.points[0].hollow);
    EXPECT_EQ(spec.table.rows.size(), 2U);
}

}  // namespace
}  // namespace steelyard
