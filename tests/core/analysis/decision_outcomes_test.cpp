#include "core/analysis/decision_outcomes.h"

#include "core/analysis/regime_engine.h"
#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kDecided(2026, 5, 4);

// Two sessions a week from eight weeks before the decision to eight after; the load goes up every two weeks after it, and what
// was off standard before no longer is.
LogBuilder risingAfter()
{
    LogBuilder builder = LogBuilder().line(QStringLiteral("Arm curl"));
    for (int week = -8; week < 8; ++week)
        for (const int weekday : {1, 4}) {
            const double load = week < 0 ? 40 : 40 + 1.25 * (week / 2 + 1);
            builder.exposure(kDecided.addDays(7 * week + weekday),
                             {MadeSet{.load = load, .reps = 10, .off = week < 0 ? 2 : 0, .rir = 1}});
        }
    builder.decide(QStringLiteral("stalled"), DecisionKind::Act, kDecided);
    return builder;
}

std::vector<DecisionOutcome> outcomesOf(const AthleteLog& log, QDate asOf)
{
    const RegimeEngine engine({}, {}, {}, ReadingDepth::Course);
    return decisionOutcomes(log, engine.readAll(log, asOf), asOf);
}

TEST(DecisionOutcomes, SetTheFourWeeksAfterBesideTheFourBefore)
{
    LogBuilder builder = risingAfter();
    const QDate asOf = kDecided.addDays(50);
    const auto outcomes = outcomesOf(builder.build(), asOf);
    ASSERT_EQ(outcomes.size(), 1u);
    const DecisionOutcome& one = outcomes.front();
    EXPECT_TRUE(one.isOver);
    EXPECT_EQ(one.until, kDecided.addDays(28));
    EXPECT_EQ(one.line, 0u);
    EXPECT_EQ(one.before.sessions, 8);
    EXPECT_EQ(one.after.sessions, 8);
    EXPECT_DOUBLE_EQ(one.before.offShare.value(), 0.2);
    EXPECT_DOUBLE_EQ(one.after.offShare.value(), 0);
    ASSERT_TRUE(one.capacityBefore && one.capacityAfter);
    EXPECT_LE(one.capacityBefore->date, kDecided);
    EXPECT_GT(one.capacityAfter->date, kDecided);
    EXPECT_LE(one.capacityAfter->date, kDecided.addDays(28));
    EXPECT_GT(one.capacityAfter->kg, one.capacityBefore->kg);
}

TEST(DecisionOutcomes, OfANewDecisionReachToTodayAndKnowNothingLater)
{
    LogBuilder builder = risingAfter();
    const QDate asOf = kDecided.addDays(7);
    const auto early = outcomesOf(builder.build(), asOf);
    ASSERT_EQ(early.size(), 1u);
    EXPECT_FALSE(early[0].isOver);
    EXPECT_EQ(early[0].until, asOf);
    EXPECT_EQ(early[0].after.sessions, 2);
    // What was known at the decision is the same whenever it is asked.
    const auto late = outcomesOf(builder.build(), kDecided.addDays(50));
    EXPECT_EQ(early[0].capacityBefore, late[0].capacityBefore);
    EXPECT_TRUE(outcomesOf(builder.build(), kDecided.addDays(-1)).empty());
}

TEST(DecisionOutcomes, AboutTheLifterCountEveryLineAndNoCapacity)
{
    LogBuilder builder = risingAfter();
    builder.lastDecision().line.reset();
    builder.line(QStringLiteral("Row")).exposure(kDecided.addDays(2), {MadeSet{.load = 60, .reps = 10, .off = 1}});
    builder.discomfort(Joint::Elbow, 4);
    builder.exposure(kDecided.addDays(29), {MadeSet{.load = 60, .reps = 10, .off = 9}}).discomfort(Joint::Elbow, 9);
    const auto outcomes = outcomesOf(builder.build(), kDecided.addDays(50));
    ASSERT_EQ(outcomes.size(), 1u);
    EXPECT_FALSE(outcomes[0].line);
    EXPECT_FALSE(outcomes[0].capacityBefore);
    EXPECT_EQ(outcomes[0].after.sessions, 9);
    EXPECT_EQ(outcomes[0].after.worstDiscomfort, 4);
    EXPECT_FALSE(outcomes[0].before.worstDiscomfort);
    EXPECT_NEAR(outcomes[0].after.offShare.value(), 1.0 / 90, 1e-12);
}

TEST(DecisionOutcomes, StandNewestFirstWithoutTheLooks)
{
    LogBuilder builder = risingAfter();
    builder.lookAtWhole(kDecided.addDays(1));
    builder.decide(QStringLiteral("unwatched"), DecisionKind::Dismiss, kDecided.addDays(1));
    builder.decide(QStringLiteral("slipping"), DecisionKind::Watch, kDecided.addDays(1), kDecided.addDays(9));
    const auto outcomes = outcomesOf(builder.build(), kDecided.addDays(50));
    ASSERT_EQ(outcomes.size(), 3u);
    EXPECT_EQ(outcomes[0].decision->value.rule, QStringLiteral("slipping"));
    EXPECT_EQ(outcomes[1].decision->value.rule, QStringLiteral("unwatched"));
    EXPECT_EQ(outcomes[2].decision->value.rule, QStringLiteral("stalled"));
}

}  // namespace
}  // namespace steelyard
