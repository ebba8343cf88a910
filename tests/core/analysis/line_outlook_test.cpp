#include "core/analysis/line_outlook.h"

#include "core/analysis/regime_engine.h"
#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kLast(2026, 6, 1);

// Twenty weeks at ten repetitions with two in reserve, seven with 2.5 kg more.
class SteadyLine : public testing::Test {
protected:
    [[nodiscard]] LineOutlook outlook(double doubt = 0) const
    {
        return {m_tracker, m_tracker.contextAt(m_log.lines.front(), m_log, kLast), kLast, doubt};
    }
    [[nodiscard]] SetTargets targets(QDate day, double rir, int number) const
    {
        return {m_tracker, m_tracker.contextAt(m_log.lines.front(), m_log, kLast), {day, rir, number}};
    }

private:
    static AthleteLog steadyLog()
    {
        LogBuilder builder;
        builder.line(QStringLiteral("Arm curl"));
        builder.exposures(20, kLast, 7, [](int i) {
            return MadeSet{.load = 40.0 + 2.5 * (i % 2), .reps = i % 2 == 0 ? 10 : 7, .off = 0, .rir = 2};
        });
        return builder.build();
    }
    AthleteLog m_log = steadyLog();
    RegimeEngine m_engine;
    LineTracker m_tracker = m_engine.track(m_log.lines.front(), m_log, kLast);
};

TEST_F(SteadyLine, SaysOfTheNextDaysWhatTheTargetsOfASetSay)
{
    const QDate day = kLast.addDays(3);
    const LineOutlook ahead = outlook();
    for (const double rir : {0.0, 1.0, 3.0})
        for (const int number : {1, 3})
            for (const double kg : {30.0, 40.0, 45.0}) {
                const auto theirs = targets(day, rir, number).at(kg);
                const auto mine = ahead.at({day, rir, number}, kg);
                ASSERT_TRUE(theirs && mine);
                for (const RepChance& one : theirs->chances)
                    EXPECT_NEAR(mine->chanceOf(one.reps), one.probability, 0.005)
                        << kg << "x" << one.reps << " rir " << rir;
                EXPECT_NEAR(mine->within(0.8).low, theirs->within80.low, 0.05);
                EXPECT_NEAR(mine->within(0.8).high, theirs->within80.high, 0.05);
                EXPECT_EQ(mine->target(kTargetChance).reps, theirs->targetReps);
            }
}

TEST_F(SteadyLine, TheTargetIsTheWholeNumberNearestToTheWantedChance)
{
    const auto set = outlook().at({kLast.addDays(3), 2, 1}, 40);
    ASSERT_TRUE(set);
    for (const double wanted : {0.5, 0.6, 0.75, 0.9}) {
        const RepChance target = set->target(wanted);
        EXPECT_DOUBLE_EQ(target.probability, set->chanceOf(target.reps));
        const double miss = std::abs(target.probability - wanted);
        EXPECT_LE(miss, std::abs(set->chanceOf(target.reps + 1) - wanted)) << wanted;
        EXPECT_LE(miss, std::abs(set->chanceOf(target.reps - 1) - wanted)) << wanted;
    }
}

TEST_F(SteadyLine, IntervalsWidenWithTheWeeksAhead)
{
    const LineOutlook ahead = outlook();
    double before = 0;
    for (int week = 0; week <= 8; week += 2) {
        const auto set = ahead.at({kLast.addDays(1 + 7 * week), 2, 1}, 40);
        ASSERT_TRUE(set);
        const RepInterval within = set->within(0.8);
        EXPECT_GT(within.high - within.low, before) << week;
        before = within.high - within.low;
    }
}

TEST_F(SteadyLine, DoubtAboutTheLoadMakesTheIntervalWiderAndTheTargetMoreCareful)
{
    const PlannedSet planned{kLast.addDays(1), 2, 1};
    const auto sure = outlook().at(planned, 40);
    const auto doubtful = outlook(0.15).at(planned, 40);
    ASSERT_TRUE(sure && doubtful);
    EXPECT_GT(doubtful->within(0.8).high - doubtful->within(0.8).low,
              2 * (sure->within(0.8).high - sure->within(0.8).low));
    EXPECT_LT(doubtful->target(0.75).reps, sure->target(0.75).reps);
}

TEST_F(SteadyLine, NothingMovedHasNoOutlook)
{
    EXPECT_FALSE(outlook().at({kLast.addDays(1), 2, 1}, 0));
}

}  // namespace
}  // namespace steelyard
