#include "core/numerics/agreement.h"

#include <gtest/gtest.h>

#include <array>

namespace steelyard {
namespace {

// Weir 2005, JSCR 19(1):231-240: one-repetition maxima of eight people, tested twice. Data from memory; they give the
// paper's F(1,7) = 0.530 and ICC(3,k) = .973.
constexpr std::array kFirst{146.0, 148.0, 170.0, 90.0, 157.0, 156.0, 176.0, 205.0};
constexpr std::array kSecond{140.0, 152.0, 152.0, 99.0, 145.0, 153.0, 167.0, 218.0};

TEST(Agreement, ReproducesWeirsStandardErrorOfMeasurement)
{
    const auto agreement = pairedAgreement(kFirst, kSecond);
    ASSERT_TRUE(agreement);
    EXPECT_EQ(agreement->pairs, 8U);
    EXPECT_NEAR(agreement->typicalError, 7.5569, 1e-4);
    EXPECT_NEAR(agreement->meanChange, 153.25 - 156.0, 1e-12);
}

TEST(Agreement, ReproducesWeirsReliability)
{
    EXPECT_NEAR(pairedAgreement(kFirst, kSecond)->consistency, 0.94702, 1e-5);
}

TEST(Agreement, ReproducesWeirsMinimalDifference)
{
    EXPECT_NEAR(minimalDetectableChange(pairedAgreement(kFirst, kSecond)->typicalError), 20.947, 1e-3);
}

TEST(Agreement, PublishedVariationOfMaximumTestsHidesChangesUnderElevenPercent)
{
    // CV 4.2 %: the median of Grgic et al. 2020, Sports Med Open 6:31.
    EXPECT_NEAR(minimalDetectableChange(4.2), 11.642, 1e-3);
    EXPECT_NEAR(minimalDetectableChange(4.2, 0.90), 9.77, 0.005);
}

TEST(Agreement, AveragingFourSessionsHalvesTheDetectableChange)
{
    EXPECT_NEAR(minimalDetectableChange(4.2, 0.95, 4), minimalDetectableChange(4.2) / 2, 1e-12);
}

TEST(Agreement, ChanceThatAChangeIsWorthwhileFollowsHopkins)
{
    // Arithmetic of Hopkins 2000: 1 - Phi((2 - 5) / (3 sqrt 2)).
    EXPECT_NEAR(chanceBeyond(5, 2, 3), 0.760, 5e-4);
    EXPECT_NEAR(chanceBeyond(2, 2, 3), 0.5, 1e-15);
}

TEST(Agreement, NeedsTwoPairs)
{
    EXPECT_FALSE(pairedAgreement(std::array{1.0}, std::array{2.0}));
    EXPECT_FALSE(pairedAgreement(kFirst, std::array{1.0, 2.0}));
}

TEST(Agreement, EqualTrialsHaveNoError)
{
    EXPECT_EQ(pairedAgreement(kFirst, kFirst)->typicalError, 0.0);
    EXPECT_NEAR(pairedAgreement(kFirst, kFirst)->consistency, 1.0, 1e-15);
}

}  // namespace
}  // namespace steelyard
