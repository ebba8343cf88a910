// Thousands of random changes, one after another: whatever is done, a sound block stays sound, and what has an opposite is undone by it.
#include "core/planning/block_ops.h"

#include "tests/support/plan_kit.h"

#include <gtest/gtest.h>

#include <functional>
#include <random>

namespace steelyard {
namespace {

using testing_support::PlanKit;

const QDate kFirstMonday(2027, 3, 1);

class RandomChanges {
public:
    explicit RandomChanges(unsigned seed) : m_random(seed) {}

    [[nodiscard]] int upTo(int most) { return std::uniform_int_distribution(0, most)(m_random); }
    [[nodiscard]] Slot slot() { return PlanKit::slot(static_cast<PlanKit::Lift>(1 + upTo(4)), 1 + upTo(5)); }
    [[nodiscard]] QDate date(const Block& block)
    {
        return block.start.addDays(upTo(static_cast<int>(block.weeks.size()) * 7 + 3) - 2);
    }
    [[nodiscard]] std::size_t week(const Block& block)
    {
        return static_cast<std::size_t>(upTo(static_cast<int>(block.weeks.size())));
    }
    [[nodiscard]] PlanPlaces places(const Block& block)
    {
        PlanPlaces all;
        for (std::size_t week = 0; week < block.weeks.size(); ++week)
            for (const PlanPlace& place : placesOfWeek(block, week))
                if (upTo(5) == 0) all.push_back(place);
        return upTo(1) ? withLaterWeeks(block, all, WeekScope::ThisAndLater, upTo(1) == 0) : all;
    }
    [[nodiscard]] Result<Block> change(const Block& block)
    {
        switch (upTo(19)) {
        case 0:
            return addSlots(block, {slot()}, date(block), static_cast<std::size_t>(upTo(3)));
        case 1:
            return addSlotsWeekly(block, {slot()}, date(block));
        case 2:
            return removeSlots(block, places(block));
        case 3:
            return moveSlots(block, places(block), upTo(20) - 10, static_cast<std::size_t>(upTo(3)));
        case 4:
            return copySlots(block, places(block), upTo(20) - 10);
        case 5:
            return stepSlots(block, places(block), upTo(1) ? 1 : -1);
        case 6:
            return replaceLift(block, places(block), PlanKit::line(static_cast<PlanKit::Lift>(1 + upTo(4))));
        case 7:
            return changeSets(block, places(block), upTo(4) - 2);
        case 8:
            return setBand(block, places(block), {upTo(12), upTo(14)});
        case 9:
            return setReserve(block, places(block), Decimal(upTo(12) - 1));
        case 10:
            return toggleSuperset(block, places(block));
        case 11:
            return rampReserve(block, week(block), Decimal(upTo(4)), Decimal(upTo(4)));
        case 12:
            return setWeekKind(block, week(block), static_cast<WeekKind>(upTo(2)));
        case 13:
            return block.weeks.size() > 6 ? removeWeek(block, week(block)) : duplicateWeek(block, week(block));
        case 14:
            return block.weeks.size() > 6 ? removeWeek(block, week(block)) : insertWeek(block, week(block));
        case 15:
            return shiftDays(block, date(block), upTo(16) - 8);
        case 16:
            return setWeekdays(block, weekdays(), week(block));
        case 17:
            return setDaysOff(block, {daysOff(block)}, date(block));
        case 18:
            return setLoad(block, places(block), upTo(1) ? Load::make(Decimal(upTo(100)), MassUnit::kg) : std::nullopt);
        default:
            return setStart(block, block.start.addDays(upTo(10) - 5));
        }
    }

private:
    [[nodiscard]] std::vector<int> weekdays()
    {
        std::vector<int> chosen;
        for (int day = 1; day <= 7; ++day)
            if (upTo(1)) chosen.push_back(day);
        return chosen;
    }
    [[nodiscard]] DaysOff daysOff(const Block& block)
    {
        const QDate first = date(block);
        return {first, first.addDays(upTo(9)), {}};
    }

    std::mt19937 m_random;
};

bool hasLoneSuperset(const Block& block)
{
    for (const PlannedWeek& week : block.weeks)
        for (const PlannedDay& day : week.days)
            for (const Slot& slot : day.slotList)
                if (slot.superset > 0 && std::ranges::count(day.slotList, slot.superset, &Slot::superset) == 1)
                    return true;
    return false;
}

bool hasLiftTwice(const Block& block)
{
    for (const PlannedWeek& week : block.weeks)
        for (const PlannedDay& day : week.days)
            for (const Slot& slot : day.slotList)
                if (std::ranges::count_if(day.slotList, [&](const Slot& other) { return isSameLift(slot, other); }) > 1)
                    return true;
    return false;
}

TEST(BlockChanges, KeepASoundBlockSoundWhateverComes)
{
    int done = 0;
    int refused = 0;
    for (unsigned seed = 1; seed <= 60; ++seed) {
        RandomChanges random(seed);
        Block block = PlanKit::block(kFirstMonday, 4, {1, 3, 5});
        for (int step = 0; step < 120; ++step) {
            const auto after = random.change(block);
            if (!after) {
                ++refused;
                EXPECT_FALSE(after.error().what.isEmpty()) << seed << ' ' << step;
                EXPECT_EQ(after.error().code, ErrorCode::Invalid);
                continue;
            }
            ++done;
            ASSERT_TRUE(validate(*after).empty()) << seed << ' ' << step;
            ASSERT_TRUE(isLaidOutWell(*after)) << seed << ' ' << step;
            ASSERT_FALSE(hasLiftTwice(*after)) << seed << ' ' << step;
            ASSERT_FALSE(hasLoneSuperset(*after)) << seed << ' ' << step;
            block = *after;
        }
    }
    EXPECT_GT(done, 2000);
    EXPECT_GT(refused, 200);
}

TEST(BlockChanges, WithAnOppositeAreUndoneByIt)
{
    int moved = 0;
    int more = 0;
    for (unsigned seed = 1; seed <= 300; ++seed) {
        RandomChanges random(seed);
        Block block = PlanKit::block(kFirstMonday, 3, {1, 4});
        for (int step = 0; step < 12; ++step)
            if (const auto after = addSlots(block, {random.slot()}, random.date(block))) block = *after;
        const PlanPlaces places = random.places(block);
        if (const auto up = changeSets(block, places, 1)) {
            ++more;
            EXPECT_EQ(changeSets(*up, places, -1).value(), block);
        }
        const int days = random.upTo(12) - 6;
        if (const auto later = setStart(block, block.start.addDays(days))) {
            ++moved;
            EXPECT_EQ(setStart(*later, block.start).value(), block);
        }
        const std::size_t week = static_cast<std::size_t>(random.upTo(2));
        EXPECT_EQ(removeWeek(duplicateWeek(block, week).value(), week + 1).value(), block);
        EXPECT_EQ(removeWeek(insertWeek(block, week).value(), week).value(), block);
    }
    EXPECT_GT(moved, 200);
    EXPECT_GT(more, 200);
}

TEST(BlockChanges, AheadLeaveThePastAsItWas)
{
    int kept = 0;
    int guarded = 0;
    for (unsigned seed = 1; seed <= 60; ++seed) {
        RandomChanges random(seed);
        Block block = PlanKit::block(kFirstMonday, 4, {1, 3, 5});
        for (int step = 0; step < 20; ++step)
            if (const auto after = addSlots(block, {random.slot()}, random.date(block))) block = *after;
        const QDate open = block.start.addDays(9);
        for (int step = 0; step < 60; ++step) {
            const auto after = keepingPast(block, random.change(block), open);
            if (!after) {
                ++guarded;
                continue;
            }
            ++kept;
            ASSERT_EQ(after->weeks[0], block.weeks[0]) << seed << ' ' << step;
            ASSERT_EQ(after->start, block.start);
            block = *after;
        }
    }
    EXPECT_GT(kept, 300);
    EXPECT_GT(guarded, 300);
}

}  // namespace
}  // namespace steelyard
