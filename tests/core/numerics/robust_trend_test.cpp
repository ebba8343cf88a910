#include "core/numerics/robust_trend.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace steelyard {
namespace {

std::vector<double> steps(std::size_t count)
{
    std::vector<double> x(count);
    std::iota(x.begin(), x.end(), 1.0);
    return x;
}

// Sen 1968, JASA 63:1379-1389, the worked example.
const std::vector<double> kSenX{1, 2, 3, 4, 10, 12, 18};
const std::vector<double> kSenY{9, 15, 19, 20, 45, 55, 78};
// J. Little, College of the Holy Cross: the Mann-Kendall test by hand.
const std::vector<double> kByHand{12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7};
// Hollander & Wolfe, cloud seeding; from memory.
const std::vector<double> kSeeding{1.26, 1.27, 1.12, 1.16, 1.03};

TEST(RobustTrend, ReproducesSensSlopeAndInterval)
{
    const auto line = theilSen(kSenX, kSenY);
    ASSERT_TRUE(line);
    EXPECT_NEAR(line->slope, 4.0, 1e-12);
    EXPECT_EQ(line->pairs, 21U);
    const auto interval = senInterval(kSenX, kSenY, 0.93);
    ASSERT_TRUE(interval);
    EXPECT_NEAR(interval->low, 3.71, 0.005);
    EXPECT_NEAR(interval->high, 4.38, 0.005);
}

TEST(RobustTrend, KeepsTheTwoConventionsOfTheInterceptApart)
{
    // scipy 1.10.1's own test of these data: 4.0 "separate", 6.0 "joint".
    EXPECT_NEAR(theilSen(kSenX, kSenY, InterceptRule::MediansApart)->intercept, 4.0, 1e-12);
    EXPECT_NEAR(theilSen(kSenX, kSenY, InterceptRule::MedianResidual)->intercept, 6.0, 1e-12);
    EXPECT_NEAR(theilSen(steps(14), kByHand, InterceptRule::MediansApart)->intercept, 11.40, 0.005);
    EXPECT_NEAR(theilSen(steps(14), kByHand)->intercept, 12.20, 0.005);
}

TEST(RobustTrend, ReproducesTheTestWorkedByHand)
{
    const auto test = mannKendall(steps(14), kByHand);
    ASSERT_TRUE(test);
    EXPECT_EQ(test->s, 54);
    EXPECT_NEAR(test->variance, 332.667, 1e-3);
    EXPECT_NEAR(test->z, 2.90584, 1e-5);
    EXPECT_NEAR(test->pTwoSided, 0.003663, 1e-6);
    EXPECT_FALSE(test->exact);
    EXPECT_NEAR(theilSen(steps(14), kByHand)->slope, 0.566667, 1e-6);
}

TEST(RobustTrend, ReproducesCloudSeeding)
{
    const auto test = mannKendall(steps(5), kSeeding);
    EXPECT_EQ(test->s, -6);
    EXPECT_NEAR(theilSen(steps(5), kSeeding)->slope, -0.05625, 1e-12);
    // Kendall's table for n = 5, |S| >= 6: 0.117 one-sided (14 of 120 orders).
    EXPECT_TRUE(test->exact);
    EXPECT_NEAR(test->pTwoSided, 28.0 / 120.0, 1e-12);
}

TEST(RobustTrend, ExactProbabilitiesAgreeWithCountingEveryOrder)
{
    for (std::size_t n = 2; n <= 7; ++n) {
        std::vector<double> order = steps(n);
        std::vector<std::int64_t> scores;
        do {
            std::int64_t s = 0;
            for (std::size_t i = 0; i < n; ++i)
                for (std::size_t j = i + 1; j < n; ++j) s += order[j] > order[i] ? 1 : -1;
            scores.push_back(s);
        } while (std::next_permutation(order.begin(), order.end()));
        for (const std::int64_t s : scores) {
            const auto beyond = std::count_if(scores.begin(), scores.end(),
                                              [&](std::int64_t other) { return std::abs(other) >= std::abs(s); });
            ASSERT_NEAR(exactTwoSidedP(n, s), static_cast<double>(beyond) / static_cast<double>(scores.size()), 1e-12)
                << n << ' ' << s;
        }
    }
}

TEST(RobustTrend, OneWildPointDoesNotTurnTheSlope)
{
    std::vector<double> y{100, 101, 102, 103, 104, 105, 106, 107, 108};
    y[7] = 1070;  // a point in the wrong place
    EXPECT_NEAR(theilSen(steps(9), y)->slope, 1.0, 1e-12);
    EXPECT_NEAR(robustScale(residuals(steps(9), y, *theilSen(steps(9), y))).value(), 0.0, 1e-9);
}

TEST(RobustTrend, OrderOfThePointsDoesNotMatter)
{
    std::vector<double> x(kSenX.rbegin(), kSenX.rend());
    std::vector<double> y(kSenY.rbegin(), kSenY.rend());
    EXPECT_NEAR(theilSen(x, y)->slope, 4.0, 1e-12);
    EXPECT_EQ(mannKendall(x, y)->s, mannKendall(kSenX, kSenY)->s);
}

TEST(RobustTrend, PairsOfOneDayAreLeftOutOfTheSlope)
{
    const std::vector<double> x{1, 1, 2, 3};
    const std::vector<double> y{10, 90, 11, 12};
    EXPECT_EQ(theilSen(x, y)->pairs, 5U);
    EXPECT_FALSE(theilSen(std::vector<double>{2, 2}, std::vector<double>{1, 5}));
}

TEST(RobustTrend, ALevelSeriesHasNoTrend)
{
    const std::vector<double> y(12, 40.0);
    const auto test = mannKendall(steps(12), y);
    EXPECT_EQ(test->s, 0);
    EXPECT_EQ(test->variance, 0.0);
    EXPECT_EQ(test->z, 0.0);
    EXPECT_EQ(test->pTwoSided, 1.0);
    EXPECT_EQ(theilSen(steps(12), y)->slope, 0.0);
}

TEST(RobustTrend, TooFewPointsGiveNoInterval)
{
    EXPECT_FALSE(senInterval(steps(4), std::vector<double>{1, 3, 2, 4}, 0.95));
    EXPECT_TRUE(senInterval(steps(6), std::vector<double>{1, 3, 2, 4, 6, 5}, 0.90));
    EXPECT_FALSE(mannKendall(steps(2), std::vector<double>{1, 2}));
    EXPECT_FALSE(theilSen(steps(1), std::vector<double>{1}));
}

TEST(RobustTrend, RefusesSeriesThatAreNone)
{
    EXPECT_FALSE(theilSen(steps(3), std::vector<double>{1, 2}));
    const std::vector<double> hole{1, std::numeric_limits<double>::quiet_NaN(), 3};
    EXPECT_FALSE(theilSen(steps(3), hole));
    EXPECT_FALSE(mannKendall(steps(3), hole));
    EXPECT_FALSE(senInterval(steps(6), std::vector<double>{1, 3, 2, 4, 6, 5}, 1.0));
}

TEST(RobustTrend, ScaleOfOneToEightIsTwoTimesTheNormalFactor)
{
    EXPECT_NEAR(*robustScale(steps(8)), 2 * 1.4826, 1e-12);  // R: mad(1:8) == 2.9652
    EXPECT_FALSE(robustScale({}));
    EXPECT_EQ(median({3, 1, 2}), 2.0);
    EXPECT_EQ(median({4, 1, 2, 3}), 2.5);
    EXPECT_FALSE(median({}));
}

}  // namespace
}  // namespace steelyard
