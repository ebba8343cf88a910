#include "tests/support/progression_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::doneAt;
using testing_support::likelyAtForty;
using testing_support::ProgressionProbe;

ProgressionProbe afterSessions(std::vector<DoneExposure> exposures)
{
    return testing_support::probeAfter(QStringLiteral("load_by_step"), std::move(exposures));
}

// The 2-for-2 rule (Graves & Baechle, as in Baechle & Earle, Essentials): two or more repetitions over the goal in the last set of
// two consecutive sessions, then more load. The goal is the band's low end.
TEST(LoadByStep, WithoutAForecastTwoOverTheGoalTwiceRunningAddLoad)
{
    const auto step = afterSessions({doneAt(40, {11, 11, 10}), doneAt(40, {11, 10, 10})}).next();
    ASSERT_TRUE(step);
    EXPECT_EQ(step->kind, StepKind::AddLoad);
    EXPECT_EQ(step->load.kilograms(), 42.5);
    EXPECT_EQ(afterSessions({doneAt(40, {11, 11, 9}), doneAt(40, {11, 10, 10})}).next()->kind, StepKind::Hold);
    EXPECT_EQ(afterSessions({doneAt(40, {12, 12, 12})}).next()->kind, StepKind::Hold);
}

TEST(LoadByStep, WithAForecastTheLoadGoesUpAsSoonAsTheLowEndIsLikelyThere)
{
    ProgressionProbe probe = afterSessions({doneAt(40, {9, 9, 8})});
    probe.input.likely = likelyAtForty(10.5);
    const auto step = probe.next();
    ASSERT_TRUE(step);
    EXPECT_EQ(step->kind, StepKind::AddLoad);
    EXPECT_EQ(step->targetReps, (std::vector{8, 8, 7}));
    probe.input.likely = likelyAtForty(9.5);
    EXPECT_EQ(probe.next()->load.kilograms(), 40);
}

TEST(LoadByStep, AForecastUnderTheBandTakesALighterLoad)
{
    ProgressionProbe probe = afterSessions({doneAt(40, {8, 8, 8})});
    probe.input.likely = likelyAtForty(6.5);
    EXPECT_EQ(probe.next()->load.kilograms(), 35);
}

}  // namespace
}  // namespace steelyard
