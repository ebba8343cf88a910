#include "core/trials/arm_shares.h"

#include "tests/support/reference_table.h"

namespace steelyard {
namespace {

// tests/data/reference/trial_regression.csv: SciPy's quadrature of beta densities.
TEST(ArmShares, ChancesAgreeWithSciPy)
{
    const auto table = testing_support::readReference("trial_regression.csv");
    const auto said = [&](const char* label) {
        return table.value({QString::fromLatin1(label), QStringLiteral("prob")});
    };
    EXPECT_NEAR(ArmShares({{3, 8}, {6, 8}}).chanceAbove(1, 0), said("shares A 3/8 B 6/8"), 1e-9);
    EXPECT_NEAR(ArmShares({{4, 12}, {10, 12}}).chanceAbove(1, 0), said("shares A 4/12 B 10/12"), 1e-9);
    EXPECT_NEAR(ArmShares({{2, 6}, {5, 6}}).chanceBest()[1], said("shares A 2/6 B 5/6"), 1e-9);
}

TEST(ArmShares, ChancesOfSeveralArmsSumToOneAndFavourTheHigherShare)
{
    const auto best = ArmShares({{2, 8}, {4, 8}, {7, 8}}).chanceBest();
    EXPECT_NEAR(best[0] + best[1] + best[2], 1, 1e-9);
    EXPECT_GT(best[2], best[1]);
    EXPECT_GT(best[1], best[0]);
}

TEST(ArmShares, NothingSeenIsHalfAndWide)
{
    const ArmShares shares({{0, 0}, {0, 0}});
    EXPECT_NEAR(shares.chanceAbove(1, 0), 0.5, 1e-9);
    EXPECT_NEAR(shares.share(0).low, 0.05, 1e-9);
    EXPECT_NEAR(shares.share(0).high, 0.95, 1e-9);
    // The difference of two uniform shares has a triangular density: below x with chance (1 + x)^2 / 2.
    EXPECT_NEAR(shares.difference(1, 0).low, std::sqrt(0.1) - 1, 1e-6);
}

TEST(ArmShares, ADifferenceTurnsItsSignWithTheArms)
{
    const ArmShares shares({{3, 8}, {6, 8}});
    const ShareInterval one = shares.difference(1, 0);
    const ShareInterval other = shares.difference(0, 1);
    EXPECT_NEAR(one.mean, -other.mean, 1e-12);
    EXPECT_NEAR(one.low, -other.high, 1e-6);
    EXPECT_GT(one.mean, one.low);
    EXPECT_LT(one.mean, one.high);
}

}  // namespace
}  // namespace steelyard
