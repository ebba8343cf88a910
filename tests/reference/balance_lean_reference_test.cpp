// The lean that balance asks for against a hand-worked table: a lifter of 1.80 m and 80 kg, elbows at a right angle, lengths
// after Drillis & Contini 1966 (in Winter) and de Leva 1996, statics of two rigid masses about the ankle. The table was worked
// outside of this program, to a thousandth of a degree; the formula is plain statics.
#include "core/numerics/balance_lean.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace steelyard {
namespace {

struct WorkedLean {
    double loadKg;
    double degrees;
    double smallAngleDegrees;
};

class BalanceLean : public ::testing::TestWithParam<WorkedLean> {};

TEST_P(BalanceLean, AgreesWithTheWorkedTable)
{
    const WorkedLean& row = GetParam();
    const HeldLoad held = elbowFlexionHold(80, row.loadKg, 1.80, BodyTable::Men);
    EXPECT_NEAR(balanceLeanDegrees(held), row.degrees, 1e-3);
    // The first-order answer, load x lever over all the mass x height, is close and larger.
    const double all = held.bodyKg + held.loadKg;
    const double height = (held.bodyKg * held.centreHeightM + held.loadKg * held.loadHeightM) / all;
    const double first = held.loadKg * held.loadForwardM / (all * height) * 180 / std::numbers::pi;
    EXPECT_NEAR(first, row.smallAngleDegrees, 1e-3);
    EXPECT_LT(balanceLeanDegrees(held), first);
}

INSTANTIATE_TEST_SUITE_P(WorkedTable, BalanceLean,
                         ::testing::Values(WorkedLean{20, 4.116, 4.131}, WorkedLean{40, 6.712, 6.763},
                                           WorkedLean{60, 8.493, 8.588}));

TEST(BalanceLeanOf, NothingHeldIsNone)
{
    EXPECT_NEAR(balanceLeanDegrees(elbowFlexionHold(80, 0, 1.80, BodyTable::Men)), 0, 1e-9);
}

TEST(BalanceLeanOf, AMeasuredForearmReplacesTheEstimate)
{
    const double usual = balanceLeanDegrees(elbowFlexionHold(80, 40, 1.80, BodyTable::Men));
    EXPECT_GT(balanceLeanDegrees(elbowFlexionHold(80, 40, 1.80, BodyTable::Men, 0.38)), usual);
}

}  // namespace
}  // namespace steelyard
