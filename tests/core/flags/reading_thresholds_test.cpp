#include "core/flags/reading_thresholds.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

TEST(ReadingThresholds, AreTheReadingsOwnWhenNothingWasSet)
{
    EXPECT_EQ(readingThresholds({}), VerdictThresholds());
}

TEST(ReadingThresholds, FollowTheRulesTheyAreSharedWith)
{
    const auto thresholds = readingThresholds({{{QStringLiteral("effort_unknown"), QStringLiteral("percent")}, 80},
                                               {{QStringLiteral("effort_unknown"), QStringLiteral("sessions")}, 6},
                                               {{QStringLiteral("stalled"), QStringLiteral("weeks")}, 12},
                                               {{QStringLiteral("stalled"), QStringLiteral("sessions")}, 10}});
    EXPECT_DOUBLE_EQ(thresholds.mostEffortless, 0.8);
    EXPECT_EQ(thresholds.effortExposures, 6);
    EXPECT_EQ(thresholds.stallWeeks, 12);
    EXPECT_EQ(thresholds.stallWindowWeeks, 16);
    EXPECT_EQ(thresholds.stallExposures, 10);
}

TEST(ReadingThresholds, StayWithinTheRangeOfTheRule)
{
    EXPECT_EQ(readingThresholds({{{QStringLiteral("stalled"), QStringLiteral("weeks")}, 900}}).stallWeeks, 26);
}

}  // namespace
}  // namespace steelyard
