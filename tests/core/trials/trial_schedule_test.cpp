#include "core/trials/trial_schedule.h"

#include "tests/support/trial_kit.h"

#include <gtest/gtest.h>

#include <map>
#include <set>

namespace steelyard {
namespace {

using testing_support::kTrialMonday;
using testing_support::madeTrial;

TrialCalendar mondaysAndThursdays()
{
    return {.from = kTrialMonday, .weekdays = {1, 4}, .daysOff = {}, .last = {}};
}

TEST(TrialSchedule, HoldsEveryArmOnceInEveryBlock)
{
    for (const std::size_t arms : {2u, 3u, 4u}) {
        const Trial trial = madeTrial({.arms = arms, .blocks = 7});
        std::map<int, std::set<std::size_t>> byBlock;
        for (const TrialDay& day : trial.days) byBlock[day.block].insert(day.arm);
        ASSERT_EQ(byBlock.size(), 7u);
        for (const auto& [block, seen] : byBlock) EXPECT_EQ(seen.size(), arms) << block;
        EXPECT_EQ(trial.days.size(), 7 * arms);
    }
}

TEST(TrialSchedule, KeepsToWeekdaysDaysOffAndDaysBetween)
{
    Trial trial = madeTrial();
    trial.daysBetween = 4;
    TrialCalendar calendar = mondaysAndThursdays();
    calendar.daysOff = {{kTrialMonday.addDays(7), kTrialMonday.addDays(13), QStringLiteral("holiday")}};
    const auto days = drawDays(trial, calendar);
    ASSERT_TRUE(days);
    QDate before;
    for (const TrialDay& day : *days) {
        EXPECT_TRUE(day.date.dayOfWeek() == 1 || day.date.dayOfWeek() == 4);
        EXPECT_FALSE(day.date >= calendar.daysOff[0].first && day.date <= calendar.daysOff[0].last);
        if (before.isValid()) {
            EXPECT_GE(before.daysTo(day.date), 4);
        }
        before = day.date;
    }
    EXPECT_EQ(days->front().date, kTrialMonday);
}

TEST(TrialSchedule, SameSeedIsTheSameOrderWhateverTheCalendar)
{
    const Trial trial = madeTrial();
    TrialCalendar calendar = mondaysAndThursdays();
    calendar.weekdays = {2, 5, 7};
    const auto other = drawDays(trial, calendar);
    ASSERT_TRUE(other);
    for (std::size_t i = 0; i < other->size(); ++i) EXPECT_EQ((*other)[i].arm, trial.days[i].arm);
}

// Of 64 orders each about as often: chi-squared of 63 degrees of freedom is above 103 with one chance in a thousand.
TEST(TrialSchedule, DrawsEveryOrderAboutAsOften)
{
    Trial trial = madeTrial();
    std::map<std::vector<std::size_t>, int> counts;
    constexpr int kDraws = 6400;
    for (int seed = 0; seed < kDraws; ++seed) {
        trial.seed = static_cast<std::uint64_t>(seed);
        std::vector<std::size_t> order;
        const auto days = drawDays(trial, mondaysAndThursdays()).value();
        order.reserve(days.size());
        for (const TrialDay& day : days) order.push_back(day.arm);
        ++counts[order];
    }
    EXPECT_EQ(counts.size(), static_cast<std::size_t>(ordersThatCouldBeDrawn(2, 6)));
    double squares = 0;
    for (const auto& [order, count] : counts) squares += std::pow(count - 100.0, 2) / 100;
    EXPECT_LT(squares, 103);
}

TEST(TrialSchedule, BeginsWithSessionsToGetUsedToEachArmInTurns)
{
    Trial trial = madeTrial();
    trial.arms[1].runIn = 3;
    trial.arms[0].runIn = 1;
    const auto days = drawDays(trial, mondaysAndThursdays()).value();
    const std::vector<std::size_t> expected{0, 1, 1, 1};
    for (std::size_t i = 0; i < expected.size(); ++i) {
        EXPECT_EQ(days[i].block, 0);
        EXPECT_EQ(days[i].arm, expected[i]);
    }
    EXPECT_EQ(days[4].block, 1);
}

TEST(TrialSchedule, SaysWhatDoesNotFit)
{
    const Trial trial = madeTrial();
    TrialCalendar calendar = mondaysAndThursdays();
    calendar.last = kTrialMonday.addDays(20);
    const auto few = drawDays(trial, calendar);
    ASSERT_FALSE(few);
    EXPECT_EQ(few.error().code, ErrorCode::Invalid);
    EXPECT_TRUE(few.error().what.contains(u"6 of 12")) << few.error().what.toStdString();
    calendar = mondaysAndThursdays();
    calendar.weekdays.clear();
    EXPECT_FALSE(drawDays(trial, calendar));
    calendar = mondaysAndThursdays();
    calendar.from = QDate();
    EXPECT_FALSE(drawDays(trial, calendar));
}

TEST(TrialSchedule, MovingLeavesPastDaysAndTheOrderAlone)
{
    const Trial trial = madeTrial();
    TrialCalendar calendar = mondaysAndThursdays();
    calendar.from = trial.days[4].date.addDays(30);
    const auto moved = moveDays(trial, 4, calendar);
    ASSERT_TRUE(moved);
    for (std::size_t i = 0; i < trial.days.size(); ++i) {
        EXPECT_EQ((*moved)[i].arm, trial.days[i].arm);
        EXPECT_EQ((*moved)[i].date == trial.days[i].date, i < 4);
    }
    EXPECT_GE((*moved)[4].date, calendar.from);
}

// Two arms in six blocks: 2 ^ 6 orders, and 2 of them as far apart as can be.
TEST(TrialSchedule, CountsTheOrdersThatCouldBeDrawn)
{
    EXPECT_EQ(ordersThatCouldBeDrawn(2, 6), 64);
    EXPECT_EQ(ordersThatCouldBeDrawn(3, 4), 1296);
    EXPECT_NEAR(smallestPossibleP(2, 6), 0.03125, 1e-12);
    EXPECT_NEAR(smallestPossibleP(2, 5), 0.0625, 1e-12);
}

}  // namespace
}  // namespace steelyard
