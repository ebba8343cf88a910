#include "ui/pages/block/block_pins.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

const QDate kMonday(2027, 3, 8);

Slot slotOf(int variant, int sets)
{
    Slot slot{Id<Variant>(variant), Id<Grip>(1), Id<RepStandard>(variant)};
    slot.sets = sets;
    slot.band = {8, 12};
    return slot;
}

// An easier week and two normal ones, of Mondays and Thursdays with two lifts each; a set more a week.
Block threeWeeks()
{
    Block block{Id<Athlete>(1), QStringLiteral("Spring"), {}, kMonday, {}};
    for (int week = 0; week < 3; ++week)
        block.weeks.push_back({week == 0 ? WeekKind::Deload : WeekKind::Normal,
                               {{kMonday.addDays(7 * week), {}, {slotOf(1, 2 + week), slotOf(2, 3)}},
                                {kMonday.addDays(7 * week + 3), {}, {slotOf(1, 5), slotOf(3, 3)}}}});
    return block;
}

TEST(BlockPins, FixALiftOnItsWeekdayInEveryWeek)
{
    const Block block = threeWeeks();
    BlockPins pins;
    EXPECT_TRUE(pins.toggle(block, {{1, 0, 0}}));
    EXPECT_TRUE(pins.has(block, {0, 0, 0}));
    EXPECT_TRUE(pins.has(block, {2, 0, 0}));
    EXPECT_FALSE(pins.has(block, {2, 1, 0})) << "the same lift on Thursday isn't";
    EXPECT_FALSE(pins.has(block, {1, 0, 1}));
    EXPECT_FALSE(pins.has(block, {9, 0, 0}));
    EXPECT_FALSE(pins.toggle(block, {{2, 0, 0}})) << "the same pin from another week";
    EXPECT_TRUE(pins.slotsOf(block, 1).empty());
}

TEST(BlockPins, FixTheRestOfSeveralBeforeAnyIsSetFree)
{
    const Block block = threeWeeks();
    BlockPins pins;
    (void)pins.toggle(block, {{1, 0, 0}});
    EXPECT_TRUE(pins.toggle(block, {{1, 0, 0}, {1, 1, 1}}));
    EXPECT_EQ(pins.slotsOf(block, 1).size(), 2U);
    EXPECT_FALSE(pins.toggle(block, {{1, 0, 0}, {1, 1, 1}}));
    EXPECT_TRUE(pins.slotsOf(block, 1).empty());
}

TEST(BlockPins, HaveTheDoseOfTheWeekInSightUnlessThatIsAnEasierOne)
{
    const Block block = threeWeeks();
    BlockPins pins;
    (void)pins.toggle(block, {{0, 1, 1}, {0, 0, 0}});
    const auto inSight = pins.slotsOf(block, 2);
    ASSERT_EQ(inSight.size(), 2U);
    EXPECT_EQ(inSight[0].weekday, 1);
    EXPECT_EQ(inSight[0].slot.sets, 4);
    EXPECT_EQ(inSight[1].weekday, 4);
    EXPECT_EQ(pins.slotsOf(block, 0)[0].slot.sets, 3) << "of the first normal week";
}

TEST(BlockPins, LeaveLoadsToTheRecordUnlessTheCoachLockedThem)
{
    Block block = threeWeeks();
    auto& monday = block.weeks[1].days[0].slotList;
    for (Slot& slot : monday) slot.load = Load::parse(u"40", MassUnit::kg);
    monday[1].loadLocked = true;
    BlockPins pins;
    (void)pins.toggle(block, {{1, 0, 0}, {1, 0, 1}});
    const auto pinned = pins.slotsOf(block, 1);
    ASSERT_EQ(pinned.size(), 2U);
    EXPECT_FALSE(pinned[0].slot.load);
    EXPECT_EQ(pinned[1].slot.load, monday[1].load);
}

TEST(BlockPins, KeepASupersetOnlyWhole)
{
    Block block = threeWeeks();
    for (Slot& slot : block.weeks[1].days[0].slotList) slot.superset = 1;
    BlockPins pins;
    (void)pins.toggle(block, {{1, 0, 0}});
    EXPECT_EQ(pins.slotsOf(block, 1)[0].slot.superset, 0);
    (void)pins.toggle(block, {{1, 0, 1}});
    EXPECT_EQ(pins.slotsOf(block, 1)[0].slot.superset, 1);
    EXPECT_EQ(pins.slotsOf(block, 1)[1].slot.superset, 1);
}

TEST(BlockPins, SayNothingOfLiftsThatAnotherBlockLacks)
{
    BlockPins pins;
    (void)pins.toggle(threeWeeks(), {{1, 0, 0}});
    Block other = threeWeeks();
    for (PlannedWeek& week : other.weeks) week.days.erase(week.days.begin());
    EXPECT_TRUE(pins.slotsOf(other, 1).empty());
}

}  // namespace
}  // namespace steelyard
