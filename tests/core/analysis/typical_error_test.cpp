#include "core/analysis/typical_error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <vector>

namespace steelyard {
namespace {

// Weir 2005, JSCR 19(1):231-240, worked example (the eight pairs from memory; slides that show it print the same
// F = 0.530 and ICC(3,k) = .973 as these give): SEM = sqrt(MSE) = 7.557, which for two trials is the typical error, and
// MDC at 95 % = 20.95.
const std::vector<double> kWeirDifferences{146 - 140, 148 - 152, 170 - 152, 90 - 99,
                                           157 - 145, 156 - 153, 176 - 167, 205 - 218};

TEST(TypicalError, AgreesWithThePublishedWorkedExample)
{
    const auto error = typicalError(kWeirDifferences);
    ASSERT_TRUE(error);
    EXPECT_NEAR(*error, 7.557, 0.001);
    EXPECT_NEAR(smallestRealChange(*error, 0.95), 20.95, 0.01);
}

// Grgic et al. 2020, Sports Med Open 6:31: median error of a retest 4.2 %; 1.6449 x 4.2 x sqrt 2 = 9.77 %.
TEST(TypicalError, MakesNineTenthsOfTheUsualRetestErrorTenPercent)
{
    EXPECT_NEAR(smallestRealChange(4.2, 0.9), 9.77, 0.01);
}

TEST(TypicalError, LeavesASteadyChangeOut)
{
    std::vector<double> shifted = kWeirDifferences;
    for (double& difference : shifted) difference += 50;
    EXPECT_NEAR(*typicalError(shifted), *typicalError(kWeirDifferences), 1e-9);
}

TEST(TypicalError, FindsTheErrorThatWasPutIn)
{
    std::mt19937_64 engine(5);
    const auto normal = [&] {  // sum of twelve uniforms: the same with every library
        double sum = -6;
        for (int i = 0; i < 12; ++i) sum += (static_cast<double>(engine() >> 11) + 0.5) / 9007199254740992.0;
        return sum;
    };
    std::vector<double> differences;
    for (int i = 0; i < 4000; ++i) differences.push_back(0.03 * normal() - 0.03 * normal());
    EXPECT_NEAR(*typicalError(differences), 0.03, 0.0015);
    int beyond = 0;
    for (const double difference : differences) beyond += std::abs(difference) > smallestRealChange(0.03, 0.9);
    EXPECT_NEAR(beyond, 400, 60);
}

TEST(TypicalError, IsNotSaidOfOneDifference)
{
    EXPECT_FALSE(typicalError({}));
    EXPECT_FALSE(typicalError(std::vector<double>{1.0}));
}

}  // namespace
}  // namespace steelyard
