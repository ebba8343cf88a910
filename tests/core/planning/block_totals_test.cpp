#include "core/planning/block_totals.h"

#include "core/planning/session_time.h"
#include "tests/support/log_builder.h"
#include "tests/support/plan_kit.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::PlanKit;
using enum PlanKit::Lift;

const QDate kStart(2027, 3, 1);

std::vector<QString> sentences(const BlockTotals& totals, LimitKind kind)
{
    std::vector<QString> found;
    for (const BrokenLimit& one : totals.broken)
        if (one.kind == kind) found.push_back(one.sentence);
    return found;
}

double setsOf(const WeekTotal& week, Id<Muscle> muscle)
{
    const auto found = std::ranges::find(week.muscles, muscle, &MuscleTotal::muscle);
    return found == week.muscles.end() ? -1 : found->sets;
}

// Counted after Pelland et al. 2025, Sports Med, doi 10.1007/s40279-025-02344-w (a direct set 1, an indirect one a half), by hand.
// Monday: 4 presses (chest 1, triceps a half), 3 rows (back 1, biceps a half). Thursday: 3 extensions, 3 curls, 3 presses.
// Chest 4 + 3 = 7; triceps 7 x 0.5 + 3 = 6.5; back 3; biceps 3 x 0.5 + 3 = 4.5.
TEST(BlockTotals, CountAPlannedWeekAsByHand)
{
    PlanKit kit;
    Block block = PlanKit::block(kStart, 1, {1, 4});
    block.weeks[0].days[0].slotList = {PlanKit::slot(Press, 4), PlanKit::slot(Row, 3)};
    block.weeks[0].days[1].slotList = {PlanKit::slot(Extension, 3), PlanKit::slot(Curl, 3), PlanKit::slot(Press, 3)};
    const auto totals = blockTotals({block, kit.log, kit.library, kStart});
    const WeekTotal& week = totals.weeks.front();
    EXPECT_DOUBLE_EQ(setsOf(week, PlanKit::chest), 7);
    EXPECT_DOUBLE_EQ(setsOf(week, PlanKit::triceps), 6.5);
    EXPECT_DOUBLE_EQ(setsOf(week, PlanKit::back), 3);
    EXPECT_DOUBLE_EQ(setsOf(week, PlanKit::biceps), 4.5);
    EXPECT_EQ(week.sets, 16);
    EXPECT_TRUE(totals.broken.empty());
}

TEST(BlockTotals, HoldTheBlocksBandsBeforeTheLifters)
{
    PlanKit kit;
    kit.log.athlete.value.aims = {{PlanKit::chest, 8, 12}, {PlanKit::biceps, 2, 3}};
    Block block = PlanKit::block(kStart, 2, {1});
    for (PlannedWeek& week : block.weeks) week.days[0].slotList = {PlanKit::slot(Press, 4), PlanKit::slot(Curl, 4)};
    block.weeks[1].kind = WeekKind::Deload;
    const auto totals = blockTotals({block, kit.log, kit.library, kStart});
    EXPECT_EQ(sentences(totals, LimitKind::FewSets), std::vector{QStringLiteral("Chest: 4 sets, 8 to 12 are wanted.")});
    EXPECT_EQ(sentences(totals, LimitKind::ManySets).size(), 2U) << "too many is too many in an easier week as well";
    block.aims = {{PlanKit::chest, 3, 5}, {PlanKit::biceps, 4, 5}};
    EXPECT_TRUE(blockTotals({block, kit.log, kit.library, kStart}).broken.empty());
    // The ends of a band belong to it; a set beside it doesn't.
    block.aims = {{PlanKit::chest, 4, 4}, {PlanKit::biceps, 4, 4}};
    EXPECT_TRUE(blockTotals({block, kit.log, kit.library, kStart}).broken.empty());
    block.aims = {{PlanKit::chest, 5, 6}, {PlanKit::biceps, 2, 3}};
    const auto beside = blockTotals({block, kit.log, kit.library, kStart});
    EXPECT_EQ(sentences(beside, LimitKind::FewSets).size(), 1U);
    EXPECT_EQ(sentences(beside, LimitKind::ManySets).size(), 2U);
}

// By hand: 3 sets of 8-12 are 3 x 10 x 3 s = 90 s of work, 2 x 120 s of rest and 120 s of setting up: 450 s.
TEST(SessionTime, IsWorkRestAndSettingUp)
{
    PlanKit kit;
    PlannedDay day{kStart, {}, {PlanKit::slot(Press, 3)}};
    EXPECT_DOUBLE_EQ(minutesOf(day, kit.library), 7.5);
    day.slotList[0].restSeconds = 60;
    EXPECT_DOUBLE_EQ(minutesOf(day, kit.library), 5.5);
    kit.variant(Press).sides = Sides::OneAtATime;
    EXPECT_DOUBLE_EQ(minutesOf(day, kit.library), 7);
    day.slotList[0].band = {3, 5};
    day.slotList[0].restSeconds.reset();
    EXPECT_EQ(restSecondsOf(day.slotList[0]), 180);
    EXPECT_DOUBLE_EQ(minutesOf(PlannedDay{kStart, {}, {}}, kit.library), 0);
}

// By hand: two lifts of 3 sets in turns are 6 x (30 + 15) s, 2 rests of 120 s and 2 x 120 s of setting up: 750 s; by themselves 900 s.
TEST(SessionTime, IsShorterInTurns)
{
    PlanKit kit;
    PlannedDay day{kStart, {}, {PlanKit::slot(Press, 3), PlanKit::slot(Row, 3)}};
    EXPECT_DOUBLE_EQ(minutesOf(day, kit.library), 15);
    for (Slot& slot : day.slotList) slot.superset = 1;
    EXPECT_DOUBLE_EQ(minutesOf(day, kit.library), 12.5);
}

TEST(BlockLimits, NameADayThatIsTooLong)
{
    PlanKit kit;
    kit.log.athlete.value.minutesPerDay = 20;
    Block block = PlanKit::block(kStart, 1, {1, 4});
    block.weeks[0].days[1].slotList = {PlanKit::slot(Press, 5), PlanKit::slot(Row, 5)};
    auto totals = blockTotals({block, kit.log, kit.library, kStart});
    ASSERT_EQ(totals.broken.size(), 1U);
    EXPECT_EQ(totals.broken[0].kind, LimitKind::LongDay);
    EXPECT_EQ(totals.broken[0].day, 1U);
    EXPECT_EQ(totals.broken[0].sentence, QStringLiteral("About 25 minutes, 20 are there."));
    block.minutesPerDay = 30;
    EXPECT_TRUE(blockTotals({block, kit.log, kit.library, kStart}).broken.empty());
}

TEST(BlockLimits, SayNothingOfWhatHasPassed)
{
    PlanKit kit;
    kit.log.athlete.value.aims = {{PlanKit::chest, 8, 12}};
    Block block = PlanKit::block(kStart, 2, {1, 4});
    block.minutesPerDay = 10;
    for (PlannedWeek& week : block.weeks)
        for (PlannedDay& day : week.days) day.slotList = {PlanKit::slot(Press, 5)};
    block.weeks[0].days[1].slotList[0].sets = block.weeks[1].days[1].slotList[0].sets = 1;
    EXPECT_EQ(blockTotals({block, kit.log, kit.library, kStart}).broken.size(), 4U);
    EXPECT_EQ(blockTotals({block, kit.log, kit.library, kStart.addDays(1)}).broken.size(), 3U) << "the week goes on";
    EXPECT_EQ(blockTotals({block, kit.log, kit.library, kStart.addDays(7)}).broken.size(), 2U);
    EXPECT_TRUE(blockTotals({block, kit.log, kit.library, kStart.addDays(14)}).broken.empty());
}

TEST(BlockLimits, NameBackLoadingOfADayAndOfTheDayAfter)
{
    PlanKit kit;
    Block block = PlanKit::block(kStart, 1, {1, 2, 4});
    block.weeks[0].days[0].slotList = {PlanKit::slot(Pull, 8), PlanKit::slot(Row, 6)};
    block.weeks[0].days[1].slotList = {PlanKit::slot(Row, 3)};
    block.weeks[0].days[2].slotList = {PlanKit::slot(Row, 3)};
    const auto totals = blockTotals({block, kit.log, kit.library, kStart});
    EXPECT_DOUBLE_EQ(totals.weeks[0].days[0].backSets, 11);
    EXPECT_DOUBLE_EQ(totals.weeks[0].days[1].backSets, 1.5);
    ASSERT_EQ(sentences(totals, LimitKind::BackLoading).size(), 2U);
    EXPECT_EQ(totals.broken[0].day, 0U);
    EXPECT_EQ(sentences(totals, LimitKind::BackLoading)[0],
              QStringLiteral("The back is loaded by 11 sets, 10 are the most of a day."));
}

TEST(BlockLimits, NameSessionsOfAMuscleThatFollowTooSoon)
{
    PlanKit kit;
    Block block = PlanKit::block(kStart, 2, {1, 2, 7});
    block.weeks[0].days[0].slotList = {PlanKit::slot(Curl, 3), PlanKit::slot(Press, 3)};
    block.weeks[0].days[1].slotList = {PlanKit::slot(Curl, 3), PlanKit::slot(Extension, 3)};
    block.weeks[0].days[2].slotList = {PlanKit::slot(Press, 3)};
    block.weeks[1].days[0].slotList = {PlanKit::slot(Press, 3)};
    const auto totals = blockTotals({block, kit.log, kit.library, kStart});
    ASSERT_EQ(totals.broken.size(), 2U);
    EXPECT_EQ(totals.broken[0].sentence, QStringLiteral("Only 1 day(s) after the last session of: Biceps."));
    EXPECT_EQ(totals.broken[0].day, 1U);
    EXPECT_EQ(totals.broken[1].week, 1U) << "Sunday and Monday are neighbours over the week";
}

TEST(BlockLimits, NameAJointThatWasRatedLatelyWhereItsExerciseIsPlannedAhead)
{
    PlanKit kit;
    const QDate today = kStart.addDays(2);
    LogBuilder builder;
    builder.line(QStringLiteral("Press")).exposure(today.addDays(-30), {{.load = 40, .reps = 8}});
    builder.discomfort(Joint::Shoulder, 9);
    builder.exposure(today.addDays(-5), {{.load = 40, .reps = 8}}).discomfort(Joint::Elbow, 4);
    builder.exposure(today.addDays(-2), {{.load = 40, .reps = 8}}).discomfort(Joint::Wrist, 2);
    const AthleteLog log = builder.build();
    Block block = PlanKit::block(kStart, 1, {1, 4});
    for (PlannedDay& day : block.weeks[0].days) day.slotList = {PlanKit::slot(Row, 2), PlanKit::slot(Press, 2)};
    const auto totals = blockTotals({block, log, kit.library, today});
    ASSERT_EQ(totals.complaints.size(), 1U);
    ASSERT_EQ(totals.broken.size(), 1U);
    EXPECT_EQ(totals.broken[0].day, 1U);
    EXPECT_EQ(totals.broken[0].slot, 1U);
    EXPECT_EQ(totals.broken[0].sentence,
              QStringLiteral("The elbow was rated 4 of 10 in this exercise on 2027-02-26: watch it."));
}

TEST(BlockLimits, NameADayOffAheadAndALiftThatStandsTwice)
{
    PlanKit kit;
    Block block = PlanKit::block(kStart, 1, {1, 4});
    block.weeks[0].days[0].slotList = {PlanKit::slot(Press, 2)};
    block.weeks[0].days[1].slotList = {PlanKit::slot(Row, 2), PlanKit::slot(Row, 2)};
    block.daysOff = {{kStart, kStart.addDays(3), {}}};
    const auto totals = blockTotals({block, kit.log, kit.library, kStart.addDays(1)});
    EXPECT_EQ(sentences(totals, LimitKind::DayOff).size(), 1U) << "Monday has passed";
    ASSERT_EQ(sentences(totals, LimitKind::SameLiftTwice).size(), 1U);
    EXPECT_EQ(totals.broken.back().slot, 1U);
}

}  // namespace
}  // namespace steelyard
