#include "core/planning/block_ops.h"

#include "tests/support/plan_kit.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::PlanKit;
using enum PlanKit::Lift;

const QDate kMonday(2027, 3, 1);

// Two weeks, Monday and Thursday: press and row, then curl.
Block twoWeeks()
{
    Block block = PlanKit::block(kMonday, 2, {1, 4});
    for (PlannedWeek& week : block.weeks) {
        week.days[0].slotList = {PlanKit::slot(Press, 3), PlanKit::slot(Row, 3)};
        week.days[1].slotList = {PlanKit::slot(Curl, 4)};
    }
    return block;
}

Block must(Result<Block> result)
{
    if (!result) qFatal("%s", qPrintable(result.error().what));
    return *std::move(result);
}

std::vector<int> weekdaysOf(const PlannedWeek& week)
{
    std::vector<int> days;
    for (const PlannedDay& day : week.days) days.push_back(day.date.dayOfWeek());
    return days;
}

TEST(BlockSlots, ComeToADayThatWasNoTrainingDay)
{
    const Block after = must(addSlots(twoWeeks(), {PlanKit::slot(Extension, 2)}, kMonday.addDays(5)));
    ASSERT_EQ(after.weeks[0].days.size(), 3U);
    EXPECT_EQ(after.weeks[0].days[2].date, kMonday.addDays(5));
    EXPECT_EQ(after.weeks[0].days[2].slotList, std::vector{PlanKit::slot(Extension, 2)});
    EXPECT_EQ(after.weeks[1], twoWeeks().weeks[1]);
}

TEST(BlockSlots, ComeBeforeThatWhichIsNamed)
{
    const Block after = must(addSlots(twoWeeks(), {PlanKit::slot(Extension, 2)}, kMonday, 1));
    const auto& lifts = after.weeks[0].days[0].slotList;
    ASSERT_EQ(lifts.size(), 3U);
    EXPECT_EQ(lifts[1], PlanKit::slot(Extension, 2));
}

TEST(BlockSlots, OfOneLiftStandOnceADay)
{
    const auto twice = addSlots(twoWeeks(), {PlanKit::slot(Row, 2)}, kMonday);
    ASSERT_FALSE(twice);
    EXPECT_EQ(twice.error().code, ErrorCode::Invalid);
    EXPECT_FALSE(replaceLift(twoWeeks(), {{0, 0, 0}}, PlanKit::line(Row)));
}

TEST(BlockSlots, AreRefusedOutsideTheBlockAndOnADayOff)
{
    EXPECT_FALSE(addSlots(twoWeeks(), {PlanKit::slot(Pull, 2)}, kMonday.addDays(14)));
    EXPECT_FALSE(addSlots(twoWeeks(), {PlanKit::slot(Pull, 2)}, kMonday.addDays(-1)));
    Block holiday = twoWeeks();
    holiday.daysOff = {{kMonday.addDays(1), kMonday.addDays(2), {}}};
    EXPECT_FALSE(addSlots(holiday, {PlanKit::slot(Pull, 2)}, kMonday.addDays(2)));
    EXPECT_TRUE(addSlots(holiday, {PlanKit::slot(Pull, 2)}, kMonday.addDays(3)));
}

TEST(BlockSlots, AddedWeekByWeekAreEasierInADeloadWeek)
{
    Block block = twoWeeks();
    block.weeks[1].kind = WeekKind::Deload;
    Slot extension = PlanKit::slot(Extension, 3);
    extension.plannedRir = Decimal(2);
    const Block after = must(addSlotsWeekly(block, {extension}, kMonday));
    EXPECT_EQ(after.weeks[0].days[0].slotList.back().sets, 3);
    EXPECT_EQ(after.weeks[1].days[0].slotList.back().sets, 2);
    EXPECT_EQ(after.weeks[1].days[0].slotList.back().plannedRir, Decimal(4));
}

TEST(BlockSlots, MoveBetweenDaysAndWeeks)
{
    const Block later = must(moveSlots(twoWeeks(), {{0, 0, 1}}, 3));
    EXPECT_EQ(later.weeks[0].days[0].slotList.size(), 1U);
    EXPECT_EQ(later.weeks[0].days[1].slotList.back(), PlanKit::slot(Row, 3));
    const Block nextWeek = must(moveSlots(twoWeeks(), {{0, 0, 1}}, 10));
    EXPECT_EQ(nextWeek.weeks[1].days[1].slotList.size(), 2U);
    EXPECT_FALSE(moveSlots(twoWeeks(), {{0, 0, 1}}, 7)) << "the row stands there already";
}

TEST(BlockSlots, LeaveARestDayWhereTheLastOneWent)
{
    const Block after = must(moveSlots(twoWeeks(), {{0, 1, 0}}, 1));
    EXPECT_EQ(weekdaysOf(after.weeks[0]), (std::vector{1, 5}));
    const Block emptied = must(removeSlots(twoWeeks(), {{0, 1, 0}}));
    EXPECT_EQ(weekdaysOf(emptied.weeks[0]), (std::vector{1, 4})) << "taking out leaves the training day";
}

TEST(BlockSlots, MoveWithinADayToThePlaceThatIsNamed)
{
    Block block = twoWeeks();
    block.weeks[0].days[0].slotList.push_back(PlanKit::slot(Pull, 1));
    const Block after = must(moveSlots(block, {{0, 0, 0}}, 0, 2));
    const auto& lifts = after.weeks[0].days[0].slotList;
    EXPECT_EQ(lifts, (std::vector{PlanKit::slot(Row, 3), PlanKit::slot(Press, 3), PlanKit::slot(Pull, 1)}));
}

TEST(BlockSlots, StepTogetherAndStopAtTheEdge)
{
    Block block = twoWeeks();
    block.weeks[0].days[0].slotList.push_back(PlanKit::slot(Pull, 1));
    const auto down = must(stepSlots(block, {{0, 0, 0}, {0, 0, 1}}, 1)).weeks[0].days[0].slotList;
    EXPECT_EQ(down, (std::vector{PlanKit::slot(Pull, 1), PlanKit::slot(Press, 3), PlanKit::slot(Row, 3)}));
    EXPECT_FALSE(stepSlots(block, {{0, 0, 0}, {0, 0, 1}}, -1));
}

TEST(BlockSlots, TakeAnotherLiftEverywhereOrFromAWeekOn)
{
    Block block = twoWeeks();
    block.weeks[1].days[0].slotList[1].load = Load::parseWithUnit(u"60 kg");
    const Block all = must(replaceLiftFrom(block, PlanKit::line(Row), PlanKit::line(Pull), 0));
    const Block later = must(replaceLiftFrom(block, PlanKit::line(Row), PlanKit::line(Pull), 1));
    EXPECT_EQ(all.weeks[0].days[0].slotList[1].variant, Id<Variant>(Pull));
    EXPECT_EQ(later.weeks[0], block.weeks[0]);
    EXPECT_EQ(later.weeks[1].days[0].slotList[1].variant, Id<Variant>(Pull));
    EXPECT_FALSE(later.weeks[1].days[0].slotList[1].load) << "the load was for the lift before";
    EXPECT_FALSE(replaceLiftFrom(block, PlanKit::line(Extension), PlanKit::line(Pull), 0));
}

TEST(BlockSlots, OfAWeekStandForTheirLiftInTheLaterWeeks)
{
    Block block = twoWeeks();
    const PlanPlaces both{{0, 0, 1}, {1, 0, 1}};
    EXPECT_EQ(withLaterWeeks(block, {{0, 0, 1}}, WeekScope::ThisAndLater), both);
    EXPECT_EQ(withLaterWeeks(block, {{0, 0, 1}}, WeekScope::ThisWeek), (PlanPlaces{{0, 0, 1}}));
    block.weeks[1].kind = WeekKind::Deload;
    EXPECT_EQ(withLaterWeeks(block, {{0, 0, 1}}, WeekScope::ThisAndLater, true), (PlanPlaces{{0, 0, 1}}));
    EXPECT_EQ(withLaterWeeks(block, {{1, 0, 1}}, WeekScope::ThisAndLater, true), (PlanPlaces{{1, 0, 1}}));
}

TEST(BlockDoses, KeepWithinWhatAPlanCanSay)
{
    EXPECT_EQ(must(changeSets(twoWeeks(), {{0, 0, 0}, {0, 0, 1}}, 1)).weeks[0].days[0].slotList[1].sets, 4);
    EXPECT_FALSE(changeSets(must(setSets(twoWeeks(), {{0, 0, 0}}, 1)), {{0, 0, 0}}, -1));
    EXPECT_FALSE(setSets(twoWeeks(), {{0, 0, 0}}, 31));
    EXPECT_FALSE(setBand(twoWeeks(), {{0, 0, 0}}, {12, 8}));
    EXPECT_FALSE(setBand(twoWeeks(), {{0, 0, 0}}, {0, 8}));
    EXPECT_FALSE(setReserve(twoWeeks(), {{0, 0, 0}}, Decimal(-1)));
    EXPECT_FALSE(setReserve(twoWeeks(), {{0, 0, 0}}, Decimal(11)));
    EXPECT_FALSE(setRest(twoWeeks(), {{0, 0, 0}}, 3600));
    EXPECT_FALSE(setSets(twoWeeks(), {{0, 0, 0}}, 3)) << "it is so already";
    EXPECT_FALSE(setSets(twoWeeks(), {}, 4)) << "nothing was chosen";
}

TEST(BlockDoses, TakeALoadTypedByTheCoachAsTheirs)
{
    const Load load = Load::parseWithUnit(u"42.5 kg").value();
    const Block after = must(setLoad(twoWeeks(), {{0, 0, 0}}, load));
    EXPECT_TRUE(after.weeks[0].days[0].slotList[0].loadLocked);
    const Block free = must(setLoadLocked(after, {{0, 0, 0}}, false));
    EXPECT_EQ(free.weeks[0].days[0].slotList[0].load, load);
    EXPECT_FALSE(setLoadLocked(twoWeeks(), {{0, 0, 0}}, true)) << "there is no load";
    EXPECT_FALSE(must(setLoad(after, {{0, 0, 0}}, {})).weeks[0].days[0].slotList[0].loadLocked);
}

TEST(BlockDoses, DropAForecastLoadWithItsBandAndKeepTheCoachs)
{
    Block block = twoWeeks();
    block.weeks[0].days[0].slotList[0].load = Load::parseWithUnit(u"42.5 kg");
    EXPECT_FALSE(must(setBand(block, {{0, 0, 0}}, {5, 8})).weeks[0].days[0].slotList[0].load);
    block.weeks[0].days[0].slotList[0].loadLocked = true;
    EXPECT_TRUE(must(setBand(block, {{0, 0, 0}}, {5, 8})).weeks[0].days[0].slotList[0].load);
}

TEST(BlockDoses, MakeASupersetOfTwoAndTakeItApart)
{
    const Block together = must(toggleSuperset(twoWeeks(), {{0, 0, 0}, {0, 0, 1}}));
    EXPECT_EQ(together.weeks[0].days[0].slotList[0].superset, 1);
    EXPECT_EQ(together.weeks[0].days[0].slotList[1].superset, 1);
    EXPECT_EQ(must(toggleSuperset(together, {{0, 0, 0}, {0, 0, 1}})), twoWeeks());
    EXPECT_FALSE(toggleSuperset(twoWeeks(), {{0, 0, 0}})) << "one lift is no superset";
    EXPECT_EQ(must(removeSlots(together, {{0, 0, 1}})).weeks[0].days[0].slotList[0].superset, 0);
}

TEST(BlockDoses, RampTheReserveOverTheNormalWeeks)
{
    Block block = PlanKit::block(kMonday, 5, {1});
    for (PlannedWeek& week : block.weeks) week.days[0].slotList = {PlanKit::slot(Press, 3)};
    block.weeks[4].kind = WeekKind::Deload;
    const Block after = must(rampReserve(block, 0, Decimal(3), Decimal(1)));
    std::vector<std::optional<Decimal>> reserves;
    for (const PlannedWeek& week : after.weeks) reserves.push_back(week.days[0].slotList[0].plannedRir);
    EXPECT_EQ(reserves, (std::vector<std::optional<Decimal>>{Decimal(3), Decimal(2), Decimal(2), Decimal(1), {}}));
    EXPECT_FALSE(rampReserve(block, 0, Decimal(-1), Decimal(1)));
}

TEST(BlockWeeks, MadeEasierAndUsualAgainAreWhatTheyWere)
{
    Block block = twoWeeks();
    for (PlannedWeek& week : block.weeks)
        for (PlannedDay& day : week.days)
            for (Slot& slot : day.slotList) slot.plannedRir = Decimal(2);
    const Block easier = must(setWeekKind(block, 1, WeekKind::Deload));
    EXPECT_EQ(easier.weeks[1].kind, WeekKind::Deload);
    EXPECT_EQ(easier.weeks[1].days[0].slotList[0].sets, 2);  // half of three, rounded up
    EXPECT_EQ(easier.weeks[1].days[0].slotList[0].plannedRir, Decimal(4));
    EXPECT_EQ(must(setWeekKind(easier, 1, WeekKind::Normal)), block);
    const Block test = must(setWeekKind(block, 1, WeekKind::Test));
    EXPECT_EQ(test.weeks[1].days[1].slotList[0].sets, 1);
    EXPECT_EQ(must(setWeekKind(test, 1, WeekKind::Normal)), block);
    EXPECT_FALSE(setWeekKind(block, 1, WeekKind::Normal));
    EXPECT_FALSE(setWeekKind(block, 2, WeekKind::Deload));
}

TEST(BlockWeeks, EaseByWhatTheBlockSays)
{
    Block block = twoWeeks();
    block.easing = {.setsPercent = 70, .loadPercent = 80, .moreReserve = 1};
    Slot& press = block.weeks[0].days[0].slotList[0];
    press.load = Load::parseWithUnit(u"100 kg");
    press.loadLocked = true;
    const Slot eased = must(setWeekKind(block, 0, WeekKind::Deload)).weeks[0].days[0].slotList[0];
    EXPECT_EQ(eased.sets, 3);  // 2.1 rounded up
    EXPECT_EQ(eased.plannedRir, Decimal(3));
    EXPECT_EQ(eased.load, Load::parseWithUnit(u"80 kg"));
}

TEST(BlockWeeks, AreDuplicatedAndTakenOutWithTheRestMovingAlong)
{
    const Block three = must(duplicateWeek(twoWeeks(), 0));
    ASSERT_EQ(three.weeks.size(), 3U);
    EXPECT_EQ(three.weeks[1].days[0].date, kMonday.addDays(7));
    EXPECT_EQ(three.weeks[2].days[1].date, kMonday.addDays(17));
    EXPECT_EQ(three.weeks[1].days[1].slotList, three.weeks[0].days[1].slotList);
    EXPECT_EQ(must(removeWeek(three, 1)), twoWeeks());
    const Block with = must(insertWeek(twoWeeks(), 1));
    EXPECT_EQ(weekdaysOf(with.weeks[1]), (std::vector{1, 4}));
    EXPECT_TRUE(with.weeks[1].days[0].slotList.empty());
    EXPECT_EQ(must(removeWeek(with, 1)), twoWeeks());
    EXPECT_FALSE(removeWeek(PlanKit::block(kMonday, 1, {1}), 0));
}

TEST(BlockWeeks, TakeOtherWeekdaysInTheOrderOfTheirSessions)
{
    const Block after = must(setWeekdays(twoWeeks(), {2, 6}, 0));
    EXPECT_EQ(weekdaysOf(after.weeks[0]), (std::vector{2, 6}));
    EXPECT_EQ(after.weeks[1].days[1].slotList, twoWeeks().weeks[1].days[1].slotList);
    EXPECT_EQ(weekdaysOf(must(setWeekdays(twoWeeks(), {1, 3, 5}, 1)).weeks[1]), (std::vector{1, 3, 5}));
    EXPECT_FALSE(setWeekdays(twoWeeks(), {1}, 0)) << "two sessions, one day";
    EXPECT_FALSE(setWeekdays(twoWeeks(), {}, 0));
    EXPECT_FALSE(setWeekdays(twoWeeks(), {1, 1}, 0));
    EXPECT_FALSE(setWeekdays(twoWeeks(), {0, 3}, 0));
}

TEST(BlockWeeks, OfABlockThatBeginsInMidweekRunToItsEve)
{
    Block block = PlanKit::block(kMonday.addDays(2), 1, {1, 3});  // Wednesday, Friday
    for (PlannedDay& day : block.weeks[0].days) day.slotList = {PlanKit::slot(Press, 3)};
    const Block after = must(setWeekdays(block, {1, 4}, 0));
    EXPECT_EQ(after.weeks[0].days[0].date, kMonday.addDays(3));
    EXPECT_EQ(after.weeks[0].days[1].date, kMonday.addDays(7));
    EXPECT_TRUE(isLaidOutWell(after));
}

TEST(BlockWeeks, ShiftAsAWholeBeforeTheyBegin)
{
    const Block after = must(shiftDays(twoWeeks(), kMonday.addDays(-3), 2));
    EXPECT_EQ(after.start, kMonday.addDays(2));
    EXPECT_EQ(after.weeks[1].days[1].date, kMonday.addDays(12));
    EXPECT_EQ(must(shiftDays(after, kMonday, -2)), twoWeeks());
}

TEST(BlockWeeks, OfARunningBlockMoveOnWithoutItsPast)
{
    const QDate tuesday = kMonday.addDays(1);
    const Block week = must(shiftDays(twoWeeks(), tuesday, 7));
    ASSERT_EQ(week.weeks.size(), 3U);
    EXPECT_EQ(week.weeks[0].days.size(), 1U);
    EXPECT_EQ(week.weeks[1].days.front().date, kMonday.addDays(10));
    EXPECT_EQ(week.weeks[2].days.front().date, kMonday.addDays(14));
    const Block day = must(shiftDays(twoWeeks(), tuesday, 1));
    EXPECT_EQ(weekdaysOf(day.weeks[0]), (std::vector{1, 5}));
    EXPECT_EQ(weekdaysOf(day.weeks[1]), (std::vector{2, 5}));
    EXPECT_FALSE(shiftDays(twoWeeks(), tuesday, 4)) << "Thursday would become next Monday";
    EXPECT_FALSE(shiftDays(twoWeeks(), kMonday.addDays(20), 1));
}

TEST(BlockWeeks, GiveWayToDaysOff)
{
    const DaysOff monday{kMonday.addDays(7), kMonday.addDays(7), QStringLiteral("public holiday")};
    const Block after = must(setDaysOff(twoWeeks(), {monday}, kMonday));
    EXPECT_EQ(weekdaysOf(after.weeks[1]), (std::vector{2, 4}));
    const DaysOff wholeWeek{kMonday.addDays(5), kMonday.addDays(13), {}};
    const Block passed = must(setDaysOff(twoWeeks(), {wholeWeek}, kMonday));
    ASSERT_EQ(passed.weeks.size(), 3U);
    EXPECT_TRUE(passed.weeks[1].days.empty());
    EXPECT_EQ(passed.weeks[2].days[0].date, kMonday.addDays(14));
    Block crowded = PlanKit::block(kMonday, 1, {1, 2, 3, 4, 5, 6, 7});
    for (PlannedDay& day : crowded.weeks[0].days) day.slotList = {PlanKit::slot(Press, 1)};
    EXPECT_FALSE(setDaysOff(crowded, {{kMonday, kMonday, {}}}, kMonday));
    EXPECT_FALSE(setDaysOff(twoWeeks(), {{kMonday, kMonday.addDays(-1), {}}}, kMonday));
}

TEST(BlockWeeks, ThatHavePassedStayAsTheyWerePlanned)
{
    const QDate friday = kMonday.addDays(4);
    EXPECT_FALSE(keepingPast(twoWeeks(), changeSets(twoWeeks(), {{0, 0, 0}}, 1), friday));
    EXPECT_TRUE(keepingPast(twoWeeks(), changeSets(twoWeeks(), {{1, 0, 0}}, 1), friday));
    EXPECT_FALSE(keepingPast(twoWeeks(), setStart(twoWeeks(), kMonday.addDays(7)), friday));
    EXPECT_FALSE(keepingPast(twoWeeks(), setWeekKind(twoWeeks(), 0, WeekKind::Deload), friday));
    EXPECT_TRUE(keepingPast(twoWeeks(), removeWeek(twoWeeks(), 1), friday));
}

TEST(BlockWeeks, ComeBlankOnTheDaysThatWereChosen)
{
    NewBlock wanted{
        .athlete = Id<Athlete>(1), .name = QStringLiteral("  Autumn "), .start = kMonday, .weekdays = {2, 5}};
    const Block block = must(blankBlock(wanted));
    EXPECT_EQ(block.name, QStringLiteral("Autumn"));
    ASSERT_EQ(block.weeks.size(), 5U);
    EXPECT_EQ(block.weeks[4].kind, WeekKind::Deload);
    EXPECT_EQ(weekdaysOf(block.weeks[3]), (std::vector{2, 5}));
    EXPECT_TRUE(isLaidOutWell(block));
    wanted.daysOff = {{kMonday.addDays(7), kMonday.addDays(13), {}}};
    EXPECT_EQ(must(blankBlock(wanted)).weeks.size(), 6U);
    wanted.name.clear();
    EXPECT_FALSE(blankBlock(wanted));
}

TEST(BlockWeeks, ComeOnceMoreWithoutLoadsAndDaysOff)
{
    Block block = must(setLoad(twoWeeks(), {{0, 0, 0}}, Load::parseWithUnit(u"42.5 kg")));
    block = must(setDaysOff(block, {{kMonday.addDays(7), kMonday.addDays(13), {}}}, kMonday));
    const Block again = must(repeatBlock(block, QStringLiteral("Summer"), kMonday.addDays(28)));
    Block expected = must(setStart(twoWeeks(), kMonday.addDays(28)));
    expected.name = QStringLiteral("Summer");
    EXPECT_EQ(again, expected);
}

}  // namespace
}  // namespace steelyard
