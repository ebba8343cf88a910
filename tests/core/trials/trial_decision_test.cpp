#include "core/trials/trial_decision.h"

#include "tests/support/simulated_trials.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::SimulatedTrial;
using testing_support::simulateTrials;

const std::vector<std::size_t> kBothArms{0, 1};

ArmPosterior posteriorOf(double difference, int blocks)
{
    ArmValues values;
    for (int block = 0; block < blocks; ++block)
        for (const std::size_t arm : {0u, 1u}) {
            values.arm.push_back(block % 2 == 0 ? arm : 1 - arm);
            values.value.push_back(6 + (values.arm.back() == 1 ? difference : 0) + (block % 3) * 0.8);
        }
    return regressArms(values, {}).value();
}

TEST(TrialDecision, SaysNothingBeforeFourBlocksHoweverLargeTheDifference)
{
    EXPECT_EQ(decideAt(posteriorOf(5, 3), kBothArms, 3, trialRule(2, 8)).says, LookSays::TooEarly);
    EXPECT_EQ(decideAt(posteriorOf(5, 4), kBothArms, 4, trialRule(2, 8)).says, LookSays::Prefer);
}

TEST(TrialDecision, PrefersTheBetterArmWhicheverItIs)
{
    EXPECT_EQ(decideAt(posteriorOf(3, 6), kBothArms, 6, trialRule(2, 8)).best, 1u);
    EXPECT_EQ(decideAt(posteriorOf(-3, 6), kBothArms, 6, trialRule(2, 8)).best, 0u);
}

TEST(TrialDecision, GoingOnIsPointlessWhereTheRestCouldHardlySayAnything)
{
    const LookFinding found = decideAt(posteriorOf(0, 7), kBothArms, 7, trialRule(2, 8));
    EXPECT_EQ(found.says, LookSays::Futile);
    EXPECT_LT(found.chanceToPrefer, 0.05);
    EXPECT_FALSE(found.blocksAhead);
}

TEST(TrialDecision, SaysHowManyBlocksMoreADifferenceLikeThisNeeds)
{
    const LookFinding near = decideAt(posteriorOf(1.2, 5), kBothArms, 5, trialRule(2, 16));
    const LookFinding far = decideAt(posteriorOf(0.8, 5), kBothArms, 5, trialRule(2, 16));
    EXPECT_EQ(near.says, LookSays::GoOn);
    ASSERT_TRUE(near.blocksAhead && far.blocksAhead);
    EXPECT_LT(*near.blocksAhead, *far.blocksAhead);
    EXPECT_GT(near.chanceToPrefer, far.chanceToPrefer);
}

TEST(TrialDecision, AfterTheLastPlannedBlockItIsUndecided)
{
    EXPECT_EQ(decideAt(posteriorOf(0.8, 5), kBothArms, 5, trialRule(2, 5)).says, LookSays::Undecided);
}

TEST(TrialDecision, MoreLooksAskForMore)
{
    double before = 0;
    for (const int blocks : {4, 6, 8, 12, 16, 24, 50}) {
        const double asked = trialRule(2, blocks).prefer;
        EXPECT_GE(asked, before);
        EXPECT_LT(asked, 1);
        before = asked;
    }
    EXPECT_GE(trialRule(2, 4).prefer, 0.95);
}

// One in ten at most, over all looks; 1,500 trials have a standard error of 0.8 points.
constexpr double kMostFalse = 0.115;

TEST(TrialDecision, ChanceAloneSeldomBringsAPreference)
{
    for (const int blocks : {6, 8, 12, 16}) {
        const auto usual = simulateTrials({.arms = 2, .blocks = blocks}, 1500, 21);
        EXPECT_LT(usual.right + usual.wrong, 0.075) << blocks;
        const auto unlike = simulateTrials({.arms = 2, .blocks = blocks, .likeness = 0}, 1500, 22);
        EXPECT_LT(unlike.right + unlike.wrong, kMostFalse) << blocks;
        EXPECT_GT(unlike.right + unlike.wrong, 0.03) << blocks;  // the simulation does look often
    }
}

TEST(TrialDecision, NorOfThreeOrFourArmsAlsoWhenOneIsPlainlyWorse)
{
    const auto three = simulateTrials({.arms = 3, .blocks = 12, .likeness = 0, .firstArmSds = -2}, 500, 23);
    EXPECT_LT(three.right + three.wrong, kMostFalse);
    EXPECT_EQ(three.wrong, 0);
    const auto four = simulateTrials({.arms = 4, .blocks = 8, .likeness = 0}, 300, 24);
    EXPECT_LT(four.right + four.wrong, 0.06);
}

TEST(TrialDecision, NorOnTheWeighedAnswerWithSessionsMissed)
{
    const auto weighed = simulateTrials({.arms = 2, .blocks = 12, .weighed = true, .missedShare = 0.05}, 300, 25);
    EXPECT_LT(weighed.right + weighed.wrong, 0.1);  // about 5 %, standard error 1.3 points
}

TEST(TrialDecision, AStrongDriftDoesNotBringOne)
{
    const auto drifting = simulateTrials({.arms = 2, .blocks = 8, .driftSds = 3}, 1000, 26);
    EXPECT_LT(drifting.right + drifting.wrong, 0.1);
}

TEST(TrialDecision, ADifferenceIsFoundAndHardlyEverTurnedRound)
{
    const auto clear = simulateTrials({.arms = 2, .blocks = 12, .differenceSds = 1.5}, 500, 27);
    EXPECT_GT(clear.right, 0.9);
    EXPECT_LT(clear.wrong, 0.01);
    EXPECT_LT(clear.meanSessions, 18);
}

TEST(TrialDecision, IntervalsHoldTheTruthAsOftenAsTheySay)
{
    for (const double difference : {0.0, 0.5, 1.0}) {
        const auto tally = simulateTrials({.arms = 2, .blocks = 10, .differenceSds = difference}, 600, 28);
        EXPECT_GT(tally.coverage, 0.88) << difference;
    }
}

}  // namespace
}  // namespace steelyard
