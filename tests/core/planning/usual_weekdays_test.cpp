#include "core/planning/usual_weekdays.h"

#include "tests/support/plan_kit.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::PlanKit;

const QDate kFriday(2027, 2, 26);
const QDate kMonday(2027, 3, 1);

TEST(UsualWeekdays, AreThoseOfTheLastBlocksLastNormalWeek)
{
    PlanKit kit;
    Block earlier = PlanKit::block(kMonday.addDays(-70), 4, {1, 2, 3, 4});
    Block last = PlanKit::block(kMonday.addDays(-28), 3, {1, 4});
    last.weeks[2].kind = WeekKind::Deload;
    last.weeks[2].days.pop_back();
    kit.log.blocks = {{Id<Block>(1), {}, earlier}, {Id<Block>(2), {}, last}};
    EXPECT_EQ(usualWeekdays(kit.log, kFriday), (std::vector{1, 4}));
}

TEST(UsualWeekdays, AreThoseOfHalfTheWeeksWithTrainingWhereNothingWasPlanned)
{
    PlanKit kit;
    EXPECT_TRUE(usualWeekdays(kit.log, kFriday).empty());
    // Four weeks with sessions, two without: each Tuesday, two Thursdays, one Wednesday, and a Sunday of long ago.
    kit.log.sessionDates = {kFriday.addDays(-61), kFriday.addDays(-31), kFriday.addDays(-29), kFriday.addDays(-24),
                            kFriday.addDays(-17), kFriday.addDays(-16), kFriday.addDays(-15), kFriday.addDays(-3)};
    EXPECT_EQ(usualWeekdays(kit.log, kFriday), (std::vector{2, 4}));
}

}  // namespace
}  // namespace steelyard
