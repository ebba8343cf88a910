#include "core/planning/block_forecast.h"

#include "tests/support/planning_sample.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::kg;
using testing_support::PlanningSample;

PlanningSample curler(int reps = 10)
{
    PlanningSample sample;
    sample.steady(sample.curl, u"40", reps, 16);
    return sample;
}

TEST(BlockForecast, EveryDayThatIsLeftHasItsLoads)
{
    PlanningSample sample = curler();
    const Block block = sample.blockOf({sample.slotOf(sample.curl)}, 6, true);
    const BlockForecast forecast = forecastBlock(sample.input(), block);
    ASSERT_EQ(forecast.slotList.size(), 6u);
    for (const SlotForecast& one : forecast.slotList) EXPECT_TRUE(one.load.load) << one.place.week;
    EXPECT_EQ(forecast.slotList.back().load.load.value().kilograms(), 35);
    sample.today = sample.today.addDays(8);
    EXPECT_EQ(forecastBlock(sample.input(), block).slotList.size(), 4u);
}

TEST(BlockForecast, WhatIsFurtherAheadIsLessCertain)
{
    PlanningSample sample = curler();
    Slot held = sample.slotOf(sample.curl);
    held.progression = QStringLiteral("hold");
    const BlockForecast forecast = forecastBlock(sample.input(), sample.blockOf({held}, 6));
    double before = 0;
    for (const SlotForecast& one : forecast.slotList) {
        const RepInterval within = one.load.within80.value();
        EXPECT_GT(within.high - within.low, before) << one.place.week;
        before = within.high - within.low;
    }
}

TEST(BlockForecast, EachDayTakesTheDaysBeforeItAsDone)
{
    PlanningSample sample = curler(13);
    sample.log.athlete.value.experience = Experience::Novice;
    const BlockForecast forecast = forecastBlock(sample.input(), sample.blockOf({sample.slotOf(sample.curl)}, 6));
    double before = 40;
    for (const SlotForecast& one : forecast.slotList) {
        const double load = one.load.load.value().kilograms();
        EXPECT_LE(load, std::max(1.1 * before, before + 2.5)) << one.place.week;
        before = load;
    }
    EXPECT_EQ(forecast.slotList[0].load.load.value().kilograms(), 42.5);
    EXPECT_GE(forecast.slotList[5].load.load.value().kilograms(), 42.5);
}

TEST(BlockForecast, HolidaysAndDaysThatWereTrainedAreLeftOut)
{
    PlanningSample sample = curler();
    Block block = sample.blockOf({sample.slotOf(sample.curl)}, 4);
    block.daysOff = {{sample.today.addDays(7), sample.today.addDays(13), {}}};
    sample.done(sample.curl, sample.today, {{u"40", 10}});
    const BlockForecast forecast = forecastBlock(sample.input(), block);
    ASSERT_EQ(forecast.slotList.size(), 2u);
    EXPECT_EQ(forecast.slotList[0].place.week, 2u);
    EXPECT_EQ(forecast.at({0, 0, 0}), nullptr);
    EXPECT_NE(forecast.at({3, 0, 0}), nullptr);
}

TEST(BlockForecast, EffortFallsByWeekWhereTheRuleIsToPlanIt)
{
    PlanningSample sample = curler();
    Slot slot = sample.slotOf(sample.curl);
    slot.progression = QStringLiteral("effort_ramp");
    slot.plannedRir = Decimal::parse(u"1");
    const BlockForecast forecast = forecastBlock(sample.input(), sample.blockOf({slot}, 5));
    std::vector<double> reserves;
    for (const SlotForecast& one : forecast.slotList) reserves.push_back(one.load.reserve.value());
    EXPECT_EQ(reserves, (std::vector{3.0, 2.5, 2.0, 1.5, 1.0}));
}

TEST(Reforecast, ListsWhatChangedAndWhy)
{
    PlanningSample sample = curler();
    Block block = sample.blockOf({sample.slotOf(sample.curl)}, 3);
    block.weeks[0].days[0].slotList[0].load = kg(u"40");
    block.weeks[1].days[0].slotList[0].load = kg(u"50");
    const auto changes = reforecast(block, forecastBlock(sample.input(), block));
    ASSERT_EQ(changes.size(), 2u);  // the first is as it would be written
    EXPECT_EQ(changes[0].place, (PlanPlace{1, 0, 0}));
    EXPECT_EQ(changes[0].before.load, kg(u"50"));
    EXPECT_EQ(changes[0].after.load.value().kilograms(), 40);
    EXPECT_FALSE(changes[0].why.isEmpty());
    EXPECT_FALSE(changes[1].before.load);
    EXPECT_TRUE(changes[1].after.load);
}

TEST(Reforecast, LeavesTheCoachsLoadsAndTheirReserveAlone)
{
    for (const char16_t* rule : {u"band_then_load", u"effort_ramp"}) {
        PlanningSample sample = curler();
        Slot slot = sample.slotOf(sample.curl);
        slot.progression = QString::fromUtf16(rule);
        Block block = sample.blockOf({slot}, 2);
        Slot& locked = block.weeks[0].days[0].slotList[0];
        locked.load = kg(u"50");
        locked.loadLocked = true;
        const auto changes = reforecast(block, forecastBlock(sample.input(), block));
        ASSERT_EQ(changes.size(), 1u) << slot.progression.toStdString();
        EXPECT_EQ(changes[0].place.week, 1u);
    }
}

TEST(Reforecast, AcceptedChangesAreWrittenAndAskingAgainFindsNone)
{
    for (const char16_t* rule : {u"band_then_load", u"effort_ramp"}) {
        PlanningSample sample = curler();
        Slot slot = sample.slotOf(sample.curl);
        slot.progression = QString::fromUtf16(rule);
        const Block block = sample.blockOf({slot}, 5, true);
        const auto changes = reforecast(block, forecastBlock(sample.input(), block));
        const Block written = withLoads(block, changes);
        EXPECT_TRUE(reforecast(written, forecastBlock(sample.input(), written)).empty())
            << slot.progression.toStdString();
        EXPECT_TRUE(validate(written).empty());
        // Only what was accepted.
        const Block one = withLoads(block, std::span(changes).first(1));
        EXPECT_TRUE(one.weeks[0].days[0].slotList[0].load);
        EXPECT_EQ(one.weeks[1], block.weeks[1]);
    }
}

TEST(Reforecast, AChangeOfASlotThatIsNoMoreIsPassedOver)
{
    PlanningSample sample = curler();
    const Block block = sample.blockOf({sample.slotOf(sample.curl)}, 2);
    const auto changes = reforecast(block, forecastBlock(sample.input(), block));
    Block edited = block;
    edited.weeks[0].days[0].slotList[0].sets = 5;
    edited.weeks[1].days[0].slotList.clear();
    EXPECT_EQ(withLoads(edited, changes), edited);
}

}  // namespace
}  // namespace steelyard
