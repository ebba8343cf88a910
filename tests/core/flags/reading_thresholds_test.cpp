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
                                               {{QStringLiteral("stalled"), QStringLiteral("caution")}, 2}});
    EXPECT_DOUBLE_EQ(thresholds.mostEffortless, 0.8);
    EXPECT_EQ(thresholds.effortExposures, 6);
    EXPECT_EQ(thresholds.caution, Caution::Surer);
}

TEST(ReadingThresholds, StayWithinTheRangeOfTheRule)
{
    EXPECT_EQ(readingThresholds({{{QStringLiteral("stalled"), QStringLiteral("caution")}, 900}}).caution,
              Caution::Surer);
    EXPECT_EQ(readingThresholds({{{QStringLiteral("stalled"), QStringLiteral("caution")}, -4}}).caution,
              Caution::Sooner);
}

}  // namespace
}  // namespace steelyard
