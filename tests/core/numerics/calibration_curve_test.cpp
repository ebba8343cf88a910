#include "core/numerics/calibration_curve.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

constexpr CalibrationKnot kBent[] = {{0, 0.1}, {0.5, 0.4}, {1, 0.8}};

TEST(CalibrationCurve, IsStraightBetweenItsKnotsAndStaysAtItsEnds)
{
    EXPECT_DOUBLE_EQ(cameTrue(kBent, 0.25), 0.25);
    EXPECT_DOUBLE_EQ(cameTrue(kBent, 0.5), 0.4);
    EXPECT_DOUBLE_EQ(cameTrue(kBent, 0.75), 0.6);
    EXPECT_DOUBLE_EQ(cameTrue(kBent, -1), 0.1);
    EXPECT_DOUBLE_EQ(cameTrue(kBent, 2), 0.8);
}

TEST(CalibrationCurve, TurnsRound)
{
    EXPECT_DOUBLE_EQ(statedFor(kBent, 0.6), 0.75);
    for (const double stated : {0.0, 0.1, 0.5, 0.9, 1.0})
        EXPECT_NEAR(statedFor(kBent, cameTrue(kBent, stated)), stated, 1e-12);
    EXPECT_DOUBLE_EQ(statedFor(kBent, 0.05), 0);
}

}  // namespace
}  // namespace steelyard
