#include "tests/support/progression_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::doneAt;
using testing_support::likelyAtForty;
using testing_support::ProgressionProbe;

ProgressionProbe afterSessions(std::vector<DoneExposure> exposures)
{
    return testing_support::probeAfter(QStringLiteral("band_then_load"), std::move(exposures));
}

TEST(BandThenLoad, AFullBandTakesTheNextLoadFromTheLowEnd)
{
    const auto step = afterSessions({doneAt(40, {12, 12, 12})}).next();
    ASSERT_TRUE(step);
    EXPECT_EQ(step->kind, StepKind::AddLoad);
    EXPECT_EQ(step->load.kilograms(), 42.5);
    EXPECT_EQ(step->targetReps, (std::vector{8, 8, 8}));
}

TEST(BandThenLoad, RepetitionsAreAddedUpToTheTopOfTheBand)
{
    const auto step = afterSessions({doneAt(40, {12, 11, 9})}).next();
    ASSERT_TRUE(step);
    EXPECT_EQ(step->kind, StepKind::AddReps);
    EXPECT_EQ(step->load.kilograms(), 40);
    EXPECT_EQ(step->targetReps, (std::vector{12, 12, 10}));
}

TEST(BandThenLoad, AFullBandWithoutThePlannedReserveHolds)
{
    EXPECT_EQ(afterSessions({doneAt(40, {12, 12, 12}, 0.0)}).next()->kind, StepKind::Hold);
}

TEST(BandThenLoad, StayingUnderTheBandTwiceOffersAStepDown)
{
    EXPECT_EQ(afterSessions({doneAt(40, {10, 9, 8}), doneAt(40, {7, 6, 8})}).next()->kind, StepKind::AddReps);
    const auto twice = afterSessions({doneAt(40, {7, 7, 8}), doneAt(40, {7, 6, 8})}).next();
    ASSERT_TRUE(twice);
    EXPECT_EQ(twice->kind, StepKind::Reduce);
    EXPECT_EQ(twice->load.kilograms(), 37.5);
}

TEST(BandThenLoad, WithAForecastTargetsAreWhatIsLikelySetBySet)
{
    ProgressionProbe probe = afterSessions({doneAt(40, {9, 9, 9})});
    probe.input.likely = likelyAtForty(10.5);
    const auto step = probe.next();
    ASSERT_TRUE(step);
    EXPECT_EQ(step->kind, StepKind::AddReps);
    EXPECT_EQ(step->load.kilograms(), 40);
    EXPECT_EQ(step->targetReps, (std::vector{10, 9, 9}));
}

TEST(BandThenLoad, WithAForecastALikelyTopOfTheBandTakesTheNextLoadAsFarAsItIsLikely)
{
    ProgressionProbe probe = afterSessions({doneAt(40, {11, 11, 10})});
    probe.input.likely = likelyAtForty(12.5);
    const auto step = probe.next();
    ASSERT_TRUE(step);
    EXPECT_EQ(step->kind, StepKind::AddLoad);
    EXPECT_EQ(step->load.kilograms(), 42.5);
    EXPECT_EQ(step->targetReps, (std::vector{10, 10, 9}));
}

TEST(BandThenLoad, AStepTooLargeForTheBandLetsRepetitionsGoOverItsTopAndSaysWhy)
{
    ProgressionProbe probe = afterSessions({doneAt(40, {12, 12, 12})});
    probe.step = 10;
    probe.input.likely = likelyAtForty(13.5);
    const auto step = probe.next();
    ASSERT_TRUE(step);
    EXPECT_EQ(step->load.kilograms(), 40);
    EXPECT_EQ(step->targetReps.front(), 13);
    EXPECT_TRUE(step->why.contains(QStringLiteral("over the top"))) << step->why.toStdString();
}

TEST(BandThenLoad, AForecastUnderTheBandTakesALoadThatFitsAtOnce)
{
    ProgressionProbe probe = afterSessions({doneAt(40, {8, 8, 8})});
    probe.input.likely = likelyAtForty(5.5);
    const auto step = probe.next();
    ASSERT_TRUE(step);
    EXPECT_EQ(step->kind, StepKind::Reduce);
    EXPECT_EQ(step->load.kilograms(), 35);
    EXPECT_GE(step->targetReps[1], 8);
}

TEST(BandThenLoad, TheCoachsStepIsTaken)
{
    ProgressionProbe probe = afterSessions({doneAt(40, {12, 12, 12})});
    probe.settings = {{{QStringLiteral("band_then_load"), QStringLiteral("step_upper")}, 5}};
    EXPECT_EQ(probe.next()->load.kilograms(), 45);
    probe.input.lowerBody = true;
    EXPECT_EQ(probe.next()->load.kilograms(), 42.5);
}

}  // namespace
}  // namespace steelyard
