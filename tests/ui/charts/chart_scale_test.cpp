#include "ui/charts/chart_scale.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

std::size_t countBeyond(const std::vector<double>& values, double leastReach = 0)
{
    const auto beyond = beyondScale(values, leastReach);
    EXPECT_EQ(beyond.size(), values.size());
    return static_cast<std::size_t>(std::ranges::count_if(beyond, [](Beyond side) { return side != Beyond::No; }));
}

TEST(ChartScale, PutsATenfoldValueAboveAndATenthBelow)
{
    const auto beyond = beyondScale(std::vector<double>{50, 51, 510, 52, 50.5, 5, 51}, 0);
    EXPECT_EQ(beyond, (std::vector<Beyond>{Beyond::No, Beyond::No, Beyond::Above, Beyond::No, Beyond::No, Beyond::Below,
                                           Beyond::No}));
}

TEST(ChartScale, KeepsAnHonestRiseOfFortyPercentSteadyOrSudden)
{
    std::vector<double> steady;
    std::vector<double> sudden(40, 50.0);
    for (int i = 0; i < 40; ++i) steady.push_back(50 + 0.5 * i);
    sudden.push_back(70);
    EXPECT_EQ(countBeyond(steady), 0u);
    EXPECT_EQ(countBeyond(sudden), 0u);
}

TEST(ChartScale, KeepsALifterWhoTrebledAndThenHeldIt)
{
    std::vector<double> values;
    for (int i = 0; i < 12; ++i) values.push_back(30 + 5 * i);
    for (int i = 0; i < 200; ++i) values.push_back(90 + std::sin(i));
    EXPECT_EQ(countBeyond(values), 0u);
}

TEST(ChartScale, KeepsThreeFarValuesInARowButNotTwo)
{
    std::vector<double> values(30, 50.0);
    values[10] = values[11] = 300;
    EXPECT_EQ(countBeyond(values), 2u);
    values[12] = 300;
    EXPECT_EQ(countBeyond(values), 0u);
}

TEST(ChartScale, CutsNothingWhereNothingIsGained)
{
    // A wide record: the far value takes less than two thirds of the height.
    std::vector<double> values(9, 50.0);
    values.insert(values.end(), {20, 85, 50, 90, 50});
    EXPECT_EQ(countBeyond(values), 0u);
    EXPECT_EQ(countBeyond({50, 500}), 0u);  // which of the two is wrong?
}

TEST(ChartScale, LetsSmallCountsDifferByTheReachAskedFor)
{
    const std::vector<double> reps{3, 3, 4, 3, 12, 3, 3};
    EXPECT_EQ(countBeyond(reps), 1u);
    EXPECT_EQ(countBeyond(reps, 10), 0u);
}

TEST(ChartScale, WorksBelowZeroAsForAssistedLines)
{
    EXPECT_EQ(countBeyond({-20, -19, -18, -190, -18, -17}), 1u);
}

}  // namespace
}  // namespace steelyard
