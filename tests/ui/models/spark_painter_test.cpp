#include "ui/models/spark_painter.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

TEST(SparkRange, IsThatOfAllValuesWhenNoneIsFarOut)
{
    const SparkRange range = sparkRange({43, 40, 42, 41, 44});
    EXPECT_EQ(range.low, 40);
    EXPECT_EQ(range.high, 44);
}

TEST(SparkRange, LeavesASlipOfThePenOut)
{
    const SparkRange range = sparkRange({40, 41, 42, 420, 43, 44, 4});
    EXPECT_EQ(range.low, 40);
    EXPECT_EQ(range.high, 44);
}

TEST(SparkRange, OfOneValueOrOfEqualOnesIsThatValue)
{
    EXPECT_EQ(sparkRange({7}).low, 7);
    EXPECT_EQ(sparkRange({7}).high, 7);
    EXPECT_EQ(sparkRange({7, 7, 7, 9}).high, 7);
}

}  // namespace
}  // namespace steelyard
