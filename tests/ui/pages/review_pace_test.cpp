#include "ui/pages/week/review_pace.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

TEST(ReviewPace, SaysNothingBeforeThreeLiftersHaveTakenTheirTime)
{
    ReviewPace pace;
    for (const double seconds : {10.0, 40.0, 70.0}) pace.finished(seconds);  // the first has no beginning
    EXPECT_EQ(pace.minutesLeft(60), std::nullopt);
    pace.finished(100);
    EXPECT_EQ(pace.minutesLeft(60), 30);
    EXPECT_EQ(pace.minutesLeft(1), 1);  // never "0 minutes" while somebody is left
    EXPECT_EQ(pace.minutesLeft(0), 0);
}

TEST(ReviewPace, ALongConversationCountsLittleAndAPauseNotAtAll)
{
    ReviewPace pace;
    double now = 0;
    const auto take = [&](double seconds) { pace.finished(now += seconds); };
    for (const double seconds : {0.0, 30.0, 30.0, 600.0, 30.0}) take(seconds);
    EXPECT_EQ(pace.minutesLeft(10), 5);
    take(3600);
    EXPECT_EQ(pace.minutesLeft(10), 5);
}

TEST(ReviewPace, FollowsTheLastLifters)
{
    ReviewPace pace;
    double now = 0;
    for (int i = 0; i < 20; ++i) pace.finished(now += 60);
    EXPECT_EQ(pace.minutesLeft(10), 10);
    for (int i = 0; i < 12; ++i) pace.finished(now += 30);
    EXPECT_EQ(pace.minutesLeft(10), 5);
}

}  // namespace
}  // namespace steelyard
