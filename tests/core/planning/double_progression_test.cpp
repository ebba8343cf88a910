#include "core/planning/double_progression.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const Load kForty = *Load::parse(u"40", MassUnit::kg);

std::optional<Load> byTwoAndAHalf(const Load& load, LoadChange change)
{
    const Mass step = massFromGrams(2'500);
    return Load::nearest(change == LoadChange::Harder ? load.mass() + step : load.mass() - step, MassUnit::kg);
}

DoneExposure done(std::vector<int> reps, std::optional<double> rir = 2.0)
{
    DoneExposure sets;
    for (const int count : reps) sets.push_back({kForty, count, false, rir});
    return sets;
}

TEST(DoubleProgression, AFullBandTakesTheNextLoadFromTheLowEnd)
{
    const auto step = doubleProgression({{done({12, 12, 12})}, {8, 12}, 2.0, 3}, byTwoAndAHalf);
    EXPECT_EQ(step->kind, StepKind::AddLoad);
    EXPECT_EQ(step->load.kilograms(), 42.5);
    EXPECT_EQ(step->targetReps, (std::vector{8, 8, 8}));
}

TEST(DoubleProgression, RepetitionsAreAddedUpToTheTopOfTheBand)
{
    const auto step = doubleProgression({{done({12, 11, 9})}, {8, 12}, 2.0, 3}, byTwoAndAHalf);
    EXPECT_EQ(step->kind, StepKind::AddReps);
    EXPECT_EQ(step->load, kForty);
    EXPECT_EQ(step->targetReps, (std::vector{12, 12, 10}));
}

TEST(DoubleProgression, AFullBandWithoutThePlannedReserveHolds)
{
    EXPECT_EQ(doubleProgression({{done({12, 12}, 0.0)}, {8, 12}, 2.0, 2}, byTwoAndAHalf)->kind, StepKind::Hold);
}

TEST(DoubleProgression, StayingUnderTheBandTwiceOffersAStepDown)
{
    const ProgressionInput once{{done({10, 9, 8}), done({7, 6, 8})}, {8, 12}, 2.0, 3};
    EXPECT_EQ(doubleProgression(once, byTwoAndAHalf)->kind, StepKind::AddReps);
    const ProgressionInput twice{{done({7, 7, 8}), done({7, 6, 8})}, {8, 12}, 2.0, 3};
    EXPECT_EQ(doubleProgression(twice, byTwoAndAHalf)->kind, StepKind::Reduce);
    EXPECT_EQ(doubleProgression(twice, byTwoAndAHalf)->load.kilograms(), 37.5);
}

TEST(DoubleProgression, TwoForTwoAsksForTheLastSetOfTwoSessions)
{
    EXPECT_TRUE(twoForTwo(done({10, 12}), done({10, 12}), 10));
    EXPECT_FALSE(twoForTwo(done({12, 11}), done({12, 12}), 10));
}

TEST(DoubleProgression, AStepOfFivePercentAtTwelveCostsTwoRepetitions)
{
    EXPECT_NEAR(repCostOfStep(massFromGrams(40'000), massFromGrams(42'000), 12), 2.0, 1e-9);
    EXPECT_NEAR(repCostOfStep(massFromGrams(40'000), massFromGrams(42'500), 10), 2.35, 0.005);
}

}  // namespace
}  // namespace steelyard
