#include "core/numerics/local_level.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace steelyard {
namespace {

using Values = std::vector<std::optional<double>>;

// The density of one normal value, written out.
double logDensity(double value, double mean, double variance)
{
    return -0.5 * (std::log(2 * std::numbers::pi * variance) + (value - mean) * (value - mean) / variance);
}

TEST(LocalLevel, OneObservationWeighsTheStartAgainstTheNoise)
{
    const LocalLevel model{.levelVariance = 7, .noiseVariance = 1, .startMean = 2, .startVariance = 3};
    const Values y{10.0};
    EXPECT_NEAR(logLikelihood(model, y).value(), logDensity(10, 2, 4), 1e-12);
    const auto states = filtered(model, y).value();
    EXPECT_NEAR(states[0].mean, 2 + 0.75 * 8, 1e-12);
    EXPECT_NEAR(states[0].variance, 0.75, 1e-12);
}

// Two observations are one bivariate normal value: variances s + h and s + q + h, covariance s.
TEST(LocalLevel, TwoObservationsAreABivariateNormalValue)
{
    constexpr double s = 3;
    constexpr double q = 0.5;
    constexpr double h = 2;
    const Values y{1.0, 4.0};
    const double first = s + h;
    const double second = s + q + h;
    const double determinant = first * second - s * s;
    const double square = (second * 1 * 1 - 2 * s * 1 * 4 + first * 4 * 4) / determinant;
    const double expected = -0.5 * (2 * std::log(2 * std::numbers::pi) + std::log(determinant) + square);
    EXPECT_NEAR(logLikelihood(LocalLevel{.levelVariance = q, .noiseVariance = h, .startVariance = s}, y).value(),
                expected, 1e-12);
}

TEST(LocalLevel, AGapAddsUncertaintyAndNothingElse)
{
    const LocalLevel model{.levelVariance = 0.5, .noiseVariance = 2, .startVariance = 3};
    const Values gap{1.0, std::nullopt, std::nullopt, 4.0};
    const auto states = filtered(model, gap).value();
    ASSERT_EQ(states.size(), 4u);
    EXPECT_EQ(states[1].mean, states[0].mean);
    EXPECT_NEAR(states[2].variance, states[0].variance + 1.0, 1e-12);
    // Three steps to the next observation are one step of three times the variance.
    const LocalLevel coarse{.levelVariance = 1.5, .noiseVariance = 2, .startVariance = 3};
    const Values close{1.0, 4.0};
    EXPECT_NEAR(logLikelihood(model, gap).value(), logLikelihood(coarse, close).value(), 1e-12);
    EXPECT_NEAR(states[3].mean, filtered(coarse, close)->at(1).mean, 1e-12);
}

TEST(LocalLevel, IsTheTrendWhoseSlopeStaysZero)
{
    const Values y{3.0, 1.0, std::nullopt, 4.0, 1.0, 5.0, 9.0, std::nullopt};
    const LocalLevel level{.levelVariance = 0.7, .noiseVariance = 1.3, .startMean = 2, .startVariance = 50};
    const LocalTrend trend{
        .levelVariance = 0.7, .noiseVariance = 1.3, .startLevel = 2, .startLevelVariance = 50, .startSlopeVariance = 0};
    EXPECT_NEAR(logLikelihood(level, y).value(), logLikelihood(trend, y).value(), 1e-12);
    const auto levels = filtered(level, y).value();
    const auto trends = filtered(trend, y).value();
    for (std::size_t i = 0; i < y.size(); ++i) {
        EXPECT_NEAR(levels[i].mean, trends[i].level, 1e-12) << i;
        EXPECT_NEAR(levels[i].variance, trends[i].levelVariance, 1e-12) << i;
        EXPECT_EQ(trends[i].slope, 0.0);
    }
}

// Without disturbances the trend is a straight line, and the filter a regression.
TEST(LocalTrend, FindsALineThatHasNoNoiseAndCarriesItThroughAGap)
{
    Values y;
    for (int t = 0; t < 20; ++t) y.push_back(5.0 + 0.25 * t);
    y.push_back(std::nullopt);
    const auto states = filtered(LocalTrend{.noiseVariance = 1e-4}, y).value();
    EXPECT_NEAR(states[19].slope, 0.25, 1e-6);
    EXPECT_NEAR(states[20].level, 10.0, 1e-5);
    EXPECT_EQ(states[20].slope, states[19].slope);
    EXPECT_GT(states[20].levelVariance, states[19].levelVariance);
}

TEST(LocalLevel, RefusesModelsThatLeaveNothingRandomAndValuesThatAreNone)
{
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    constexpr double infinity = std::numeric_limits<double>::infinity();
    const Values y{1.0, 2.0, 4.0};
    EXPECT_FALSE(logLikelihood(LocalLevel{.levelVariance = 0, .noiseVariance = 0}, y));
    EXPECT_FALSE(logLikelihood(LocalLevel{.levelVariance = 1, .noiseVariance = 0, .startVariance = 0}, y));
    EXPECT_FALSE(logLikelihood(LocalLevel{.levelVariance = -1}, y));
    EXPECT_FALSE(logLikelihood(LocalLevel{.noiseVariance = nan}, y));
    EXPECT_FALSE(logLikelihood(LocalTrend{.noiseVariance = 0}, y));
    EXPECT_FALSE(logLikelihood(LocalTrend{.startSlope = infinity}, y));
    EXPECT_TRUE(logLikelihood(LocalLevel{.levelVariance = 1, .noiseVariance = 0}, y));
    for (const double odd : {nan, infinity, -infinity}) {
        const Values with{1.0, odd, 2.0, 4.0};
        EXPECT_FALSE(logLikelihood(LocalLevel{.levelVariance = 1}, with));
        EXPECT_FALSE(logLikelihood(LocalTrend{}, with));
        EXPECT_FALSE(filtered(LocalLevel{.levelVariance = 1}, with));
        EXPECT_FALSE(filtered(LocalTrend{}, with));
        EXPECT_FALSE(fitLocalLevel(with));
    }
    for (const Values& none : {Values{}, Values{std::nullopt, std::nullopt}}) {
        EXPECT_FALSE(logLikelihood(LocalLevel{}, none));
        EXPECT_FALSE(filtered(LocalLevel{}, none));
        EXPECT_FALSE(filtered(LocalTrend{}, none));
    }
}

TEST(FitLocalLevel, RefusesSeriesThatAreShortOrDoNotMove)
{
    EXPECT_FALSE(fitLocalLevel(Values{}));
    EXPECT_FALSE(fitLocalLevel(Values{1.0, 2.0, std::nullopt}));
    EXPECT_FALSE(fitLocalLevel(Values{5.0, 5.0, std::nullopt, 5.0}));
    EXPECT_TRUE(fitLocalLevel(Values{5.0, 5.0, std::nullopt, 6.0}));
}

// Both ends of the search are answers too.
TEST(FitLocalLevel, FindsPureNoiseAndAPureWalk)
{
    Values alternating;
    for (int t = 0; t < 30; ++t) alternating.push_back(t % 2 == 0 ? 1.0 : -1.0);
    const auto noise = fitLocalLevel(alternating).value();
    EXPECT_EQ(noise.levelVariance, 0.0);
    EXPECT_NEAR(noise.noiseVariance, 30.0 / 29.0, 1e-12);  // the sample variance of a constant mean
    Values rising;
    for (int t = 0; t < 30; ++t) rising.push_back(2.0 * t);
    const auto walk = fitLocalLevel(rising).value();
    EXPECT_EQ(walk.noiseVariance, 0.0);
    EXPECT_NEAR(walk.levelVariance, 4.0, 1e-12);
}

TEST(FitLocalLevel, FollowsTheUnitOfTheSeriesAndIgnoresGapsAtTheEnds)
{
    const Values y{3.0, 1.0, 4.0, 1.5, std::nullopt, 5.0, 9.0, 6.0, 8.0};
    const auto fit = fitLocalLevel(y).value();
    EXPECT_EQ(fit.observations, 8u);
    Values pounds{std::nullopt};
    for (const auto& value : y) pounds.push_back(value ? std::optional(100 + 10 * *value) : std::nullopt);
    pounds.push_back(std::nullopt);
    const auto scaled = fitLocalLevel(pounds).value();
    EXPECT_NEAR(scaled.levelVariance / fit.levelVariance, 100, 1e-4);
    EXPECT_NEAR(scaled.noiseVariance / fit.noiseVariance, 100, 1e-4);
    EXPECT_NEAR(scaled.logLikelihood, fit.logLikelihood - 7 * std::log(10.0), 1e-9);
}

}  // namespace
}  // namespace steelyard
