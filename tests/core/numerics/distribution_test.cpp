#include "core/numerics/distribution.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

TEST(Distribution, GivesTheTabledProbabilities)
{
    // R 4.2.2 pnorm().
    EXPECT_NEAR(normalCdf(1.96), 0.97500210485177963, 1e-15);
    EXPECT_NEAR(normalCdf(-1.0), 0.15865525393145707, 1e-15);
    EXPECT_NEAR(normalUpperTail(6.0) / 9.865876450376981e-10, 1.0, 1e-12);
}

TEST(Distribution, GivesTheTabledQuantiles)
{
    // R 4.2.2 qnorm().
    EXPECT_NEAR(normalQuantile(0.975), 1.9599639845400539, 1e-12);
    EXPECT_NEAR(normalQuantile(0.95), 1.6448536269514715, 1e-12);
    EXPECT_NEAR(normalQuantile(0.75), 0.67448975019608193, 1e-12);
    EXPECT_NEAR(normalQuantile(1e-10), -6.3613409024040557, 1e-11);
    EXPECT_EQ(normalQuantile(0.5), 0.0);
}

TEST(Distribution, InvertsTheProbabilityFromTailToTail)
{
    for (double p = 1e-300; p < 0.5; p *= 7.0) EXPECT_NEAR(normalCdf(normalQuantile(p)) / p, 1.0, 1e-11) << p;
    for (double p = 0.51; p < 1.0; p += 0.01) EXPECT_NEAR(normalCdf(normalQuantile(p)), p, 1e-14) << p;
}

TEST(Distribution, RefusesProbabilitiesThatAreNone)
{
    EXPECT_TRUE(std::isnan(normalQuantile(-0.1)));
    EXPECT_TRUE(std::isnan(normalQuantile(1.1)));
    EXPECT_TRUE(std::isnan(normalQuantile(std::nan(""))));
    EXPECT_EQ(normalQuantile(0.0), -HUGE_VAL);
    EXPECT_EQ(normalQuantile(1.0), HUGE_VAL);
}

TEST(Distribution, LogOfATinyProbabilityStaysFinite)
{
    // R 4.2.2 pnorm(-40, log.p = TRUE) and pnorm(-10, log.p = TRUE).
    EXPECT_NEAR(normalLogCdf(-40.0), -804.6084420137538, 1e-9);
    EXPECT_NEAR(normalLogCdf(-10.0), -53.23128515051247, 1e-11);
    EXPECT_NEAR(normalLogCdf(-35.0), normalLogCdf(-34.999999), 1e-4);  // where the two formulas meet
    EXPECT_NEAR(normalLogCdf(8.0) / -6.2209605742717868e-16, 1.0, 1e-10);
}

TEST(Distribution, LogOfAProbabilityNearOneKeepsItsDigits)
{
    // The tail of the normal distribution at 5, R 4.2.2 pnorm(5, lower.tail = FALSE).
    constexpr double tail = 2.8665157187919391e-07;
    EXPECT_NEAR(normalLogCdf(5.0) / -(tail + tail * tail / 2), 1.0, 1e-13);
    EXPECT_NEAR(normalLogCdf(1e-9), normalLogCdf(-1e-9), 2e-9);  // where the two formulas meet
}

TEST(Distribution, HazardIsDensityByTailAndItsSlopeItsDerivative)
{
    for (double z = -6.0; z < 12.0; z += 0.37) {
        const double density = std::exp(-0.5 * z * z) / std::sqrt(2 * std::acos(-1.0));
        EXPECT_NEAR(normalHazard(z) * normalUpperTail(z) / density, 1.0, 1e-13) << z;
        constexpr double step = 1e-5;
        const double slope = (normalHazard(z + step) - normalHazard(z - step)) / (2 * step);
        EXPECT_NEAR(normalHazardSlope(z), slope, 1e-8) << z;
    }
}

TEST(Distribution, HazardStaysFiniteInBothTails)
{
    EXPECT_EQ(normalHazard(-1e3), 0.0);
    EXPECT_EQ(normalHazardSlope(-1e3), 0.0);
    EXPECT_EQ(normalHazardSlope(-HUGE_VAL), 0.0);
    EXPECT_EQ(normalHazard(1e9), 1e9);
    EXPECT_EQ(normalHazardSlope(1e9), 1.0);
}

}  // namespace
}  // namespace steelyard
