#include "core/planning/load_steps.h"

#include "tests/support/progression_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::doneAt;
using testing_support::kilogramsOf;

TEST(LoadSteps, TwoForTwoAsksForTheLastSetOfTwoSessions)
{
    EXPECT_TRUE(twoForTwo(doneAt(40, {10, 12}), doneAt(40, {10, 12}), 10));
    EXPECT_FALSE(twoForTwo(doneAt(40, {12, 11}), doneAt(40, {12, 12}), 10));
    EXPECT_FALSE(twoForTwo(doneAt(37.5, {12, 12}), doneAt(40, {12, 12}), 10));
}

TEST(LoadSteps, AStepOfFivePercentAtTwelveCostsTwoRepetitions)
{
    EXPECT_NEAR(repCostOfStep(massFromGrams(40'000), massFromGrams(42'000), 12), 2.0, 1e-9);
    EXPECT_NEAR(repCostOfStep(massFromGrams(40'000), massFromGrams(42'500), 10), 2.35, 0.005);
}

Variant stackOf(double firstStepKg)
{
    Variant variant{Id<Exercise>(1), QStringLiteral("stack")};
    variant.loading = Loading::Stack;
    variant.step = kilogramsOf(firstStepKg);
    return variant;
}

std::optional<double> stepped(double step, double from, LoadChange change, double wishKg)
{
    const LoadFinder loads(nullptr, MassUnit::kg);
    const auto load = steppedLoad(loads, stackOf(step), kilogramsOf(from), change,
                                  massFromGrams(static_cast<std::int64_t>(1000 * wishKg)), 0);
    return load ? std::optional(load->kilograms()) : std::nullopt;
}

TEST(LoadSteps, AStepIsTheLoadNearestToTheWishAndAtLeastTheNext)
{
    EXPECT_EQ(stepped(2.5, 100, LoadChange::Harder, 1), 102.5);
    EXPECT_EQ(stepped(2.5, 100, LoadChange::Harder, 4), 105);
    EXPECT_EQ(stepped(1.25, 100, LoadChange::Harder, 4), 103.75);
    EXPECT_EQ(stepped(2.5, 100, LoadChange::Easier, 0), 97.5);
}

TEST(LoadSteps, ARiseIsAtMostATenthUnlessTheSmallestStepIsLarger)
{
    EXPECT_EQ(stepped(1.25, 30, LoadChange::Harder, 10), 32.5);
    EXPECT_EQ(stepped(5, 20, LoadChange::Harder, 10), 25);
    // Going down is no risk.
    EXPECT_EQ(stepped(1.25, 30, LoadChange::Easier, 10), 20);
}

TEST(LoadSteps, LessHelpIsHarderAndTheRiseIsOfWhatIsMoved)
{
    Variant assisted{Id<Exercise>(1), QStringLiteral("assisted")};
    assisted.loading = Loading::Assisted;
    assisted.step = kilogramsOf(5);
    const LoadFinder loads(nullptr, MassUnit::kg);
    const auto harder = steppedLoad(loads, assisted, kilogramsOf(30), LoadChange::Harder, massFromGrams(12'000), 80);
    // 50 kg are moved; 55 are a tenth more, 60 a fifth.
    EXPECT_EQ(harder.value().kilograms(), 25);
    EXPECT_NEAR(riseOf(assisted, kilogramsOf(30), kilogramsOf(25), 80), 0.1, 1e-12);
    EXPECT_FALSE(steppedLoad(loads, assisted, kilogramsOf(0), LoadChange::Harder, Mass(), 80));
}

// NSCA Essentials, ch. 17, load increases of the 2-for-2 rule: 1 to 2 kg and 2 to 4 kg for the smaller and less trained, 2 to 4
// and 4 to 7 kg and more for the others (from memory; upper-body rows seen repeated elsewhere).
TEST(LoadSteps, ThePublishedStepsAreByTrainingAndHalfOfTheBody)
{
    EXPECT_EQ(publishedLoadStep(false, false).leastKg, 1);
    EXPECT_EQ(publishedLoadStep(false, true).leastKg, 2);
    EXPECT_EQ(publishedLoadStep(true, false).mostKg, 4);
    EXPECT_EQ(publishedLoadStep(true, true).mostLb, 15);
}

}  // namespace
}  // namespace steelyard
