#include "tests/support/progression_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::doneAt;
using testing_support::likelyAtForty;
using testing_support::ProgressionProbe;

std::optional<double> reserveIn(const PlannedPlace& place, const RuleSettings& settings = {})
{
    const ProgressionRule& rule = *findProgression(u"effort_ramp");
    return rule.reserve(place, RuleParameters(rule, settings));
}

TEST(EffortRamp, TheReserveFallsByWeekToWhatTheSlotSays)
{
    EXPECT_EQ(reserveIn({1.0, false, 4}), 3.0);
    EXPECT_EQ(reserveIn({1.0, false, 1}), 1.5);
    EXPECT_EQ(reserveIn({1.0, false, 0}), 1.0);
    EXPECT_EQ(reserveIn({std::nullopt, false, 0}), 1.0);
}

TEST(EffortRamp, ItBeginsNoFurtherFromFailureThanLiftersCanJudge)
{
    EXPECT_EQ(reserveIn({2.0, false, 20}), 4.0);
    // A slot that asks for more ends there all the same.
    EXPECT_EQ(reserveIn({5.0, false, 3}), 5.0);
}

TEST(EffortRamp, ReservesThatTheCoachWroteByWeekStay)
{
    EXPECT_EQ(reserveIn({2.5, true, 3}), 2.5);
}

TEST(EffortRamp, TheLoadFollowsWhatTheMiddleOfTheBandAllows)
{
    ProgressionProbe probe{QStringLiteral("effort_ramp")};
    probe.input.exposures = {doneAt(40, {10, 10, 10})};
    probe.input.likely = likelyAtForty(12.5);
    EXPECT_EQ(probe.next()->load.kilograms(), 42.5);
    probe.input.likely = likelyAtForty(11.5);
    EXPECT_EQ(probe.next()->load.kilograms(), 40);
    probe.input.likely = likelyAtForty(6.5);
    EXPECT_EQ(probe.next()->load.kilograms(), 35);
}

TEST(EffortRamp, WithoutAForecastOneLessInReserveIsOneMoreDone)
{
    ProgressionProbe probe{QStringLiteral("effort_ramp")};
    probe.input.exposures = {doneAt(40, {10, 9, 9}, 3.0)};
    probe.input.plannedRir = 1;
    const auto step = probe.next();
    ASSERT_TRUE(step);
    EXPECT_EQ(step->load.kilograms(), 40);
    EXPECT_EQ(step->targetReps, (std::vector{12, 11, 11}));
}

}  // namespace
}  // namespace steelyard
