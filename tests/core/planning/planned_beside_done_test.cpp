#include "core/planning/planned_beside_done.h"

#include "tests/support/planning_sample.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::PlanningSample;

// Three weeks of Mondays with curls and squats, of which today is the fourth Monday.
struct ThreeWeeks : PlanningSample {
    Block block = blockOf({slotOf(curl), slotOf(squat)}, 4);
    QDate monday = today;
    ThreeWeeks() { today = monday.addDays(21); }
    [[nodiscard]] PlannedBesideDone beside() const { return plannedBesideDone(log, block, today); }
};

TEST(PlannedBesideDone, SaysSetBySetWhatWasDone)
{
    ThreeWeeks sample;
    sample.done(sample.curl, sample.monday, {{u"40", 10}, {u"40", 10, 2}, {u"37.5", 8}});
    sample.done(sample.squat, sample.monday, {{u"100", 8}, {u"100", 7}});
    const auto beside = sample.beside();
    const auto& day = beside.weeks.at(0).days.at(0);
    EXPECT_EQ(day.done, sample.monday);
    EXPECT_EQ(day.slotList[0].outcome, SlotOutcome::Done);
    EXPECT_EQ(day.slotList[0].countedReps, (std::vector{10, 8, 8}));
    EXPECT_EQ(day.slotList[0].loads[2].kilograms(), 37.5);
    EXPECT_EQ(day.slotList[1].outcome, SlotOutcome::Fewer);
    EXPECT_EQ(day.slotList[1].plannedSets, 3);
    const Adherence week = beside.ofWeek(0);
    EXPECT_DOUBLE_EQ(week.sessionShare().value(), 1);
    EXPECT_DOUBLE_EQ(week.setShare().value(), 5.0 / 6);
}

TEST(PlannedBesideDone, ASessionOnAnotherDayOfTheWeekSkipsNothing)
{
    ThreeWeeks sample;
    sample.done(sample.curl, sample.monday.addDays(2), {{u"40", 10}, {u"40", 10}, {u"40", 9}, {u"40", 9}});
    const auto beside = sample.beside();
    EXPECT_EQ(beside.weeks[0].days[0].done, sample.monday.addDays(2));
    EXPECT_EQ(beside.weeks[0].days[0].slotList[0].outcome, SlotOutcome::Done);
    EXPECT_EQ(beside.weeks[0].days[0].slotList[1].outcome, SlotOutcome::Skipped);
    // A fourth set makes up for nothing.
    EXPECT_EQ(beside.ofWeek(0).doneSets, 3);
    EXPECT_EQ(beside.ofWeek(0).skippedSlots, 1);
}

TEST(PlannedBesideDone, ASetIsOnTargetWithItsLoadAndTheLowEndOfItsBand)
{
    ThreeWeeks sample;
    Slot& planned = sample.block.weeks[0].days[0].slotList[0];
    planned.load = Load::parse(u"40", MassUnit::kg);
    planned.band = {8, 12};
    // Enough at more than the load; off-standard repetitions left 7; enough, but lighter. The fourth is beyond the plan.
    sample.done(sample.curl, sample.monday, {{u"42.5", 8}, {u"40", 10, 3}, {u"37.5", 12}, {u"40", 12}});
    sample.done(sample.squat, sample.monday, {{u"100", 8}});
    const Adherence week = sample.beside().ofWeek(0);
    EXPECT_EQ(week.doneSets, 4);
    EXPECT_EQ(week.targetSets, 2) << "one of the curl, and the squat, which has no planned load";
    EXPECT_DOUBLE_EQ(week.targetShare().value(), 0.5);
    EXPECT_FALSE(sample.beside().ofWeek(1).targetShare()) << "of nothing there is no share";
}

TEST(PlannedBesideDone, AnotherLineOfTheExerciseIsAChange)
{
    ThreeWeeks sample;
    sample.addLine(QStringLiteral("Arm curl"), QStringLiteral("angled bar"), Loading::BarTotal, Implement::AngledBar);
    const std::size_t other = sample.log.lines.size() - 1;
    sample.log.lines[other].exercise = sample.log.lines[sample.curl].exercise;
    sample.done(other, sample.monday, {{u"35", 10}, {u"35", 10}, {u"35", 10}});
    const auto beside = sample.beside();
    const SlotBesideDone& slot = beside.weeks[0].days[0].slotList[0];
    EXPECT_EQ(slot.outcome, SlotOutcome::Changed);
    EXPECT_EQ(slot.line, &sample.log.lines[other]);
    EXPECT_EQ(slot.loads.size(), 3u);
    EXPECT_EQ(beside.ofWeek(0).changedSlots, 1);
    EXPECT_EQ(beside.ofWeek(0).doneSets, 0);
}

TEST(PlannedBesideDone, MissedDaysCountAndWhatIsToComeDoesnt)
{
    ThreeWeeks sample;
    sample.done(sample.curl, sample.monday, {{u"40", 10}, {u"40", 10}, {u"40", 9}});
    const Adherence all = sample.beside().ofBlock();
    EXPECT_EQ(all.expectedSessions, 3);  // today isn't over
    EXPECT_EQ(all.doneSessions, 1);
    EXPECT_EQ(sample.beside().weeks[3].days[0].slotList[0].outcome, SlotOutcome::Ahead);
    EXPECT_FALSE(sample.beside().ofWeek(3).sessionShare());
    sample.done(sample.curl, sample.today, {{u"40", 10}});
    EXPECT_EQ(sample.beside().ofBlock().expectedSessions, 4);
}

TEST(PlannedBesideDone, AHolidayIsNotMissed)
{
    ThreeWeeks sample;
    sample.block.daysOff = {{sample.monday.addDays(7), sample.monday.addDays(14), {}}};
    EXPECT_EQ(sample.beside().ofBlock().expectedSessions, 1);
}

TEST(PlannedBesideDone, WarmUpsAreNoSetsAndDeloadSetsAreThoseOfAnEasierWeek)
{
    ThreeWeeks sample;
    sample.done(sample.curl, sample.monday, {{u"20", 8, 0, 5, SetKind::WarmUp}, {u"35", 8, 0, 4, SetKind::Deload}});
    EXPECT_EQ(sample.beside().weeks[0].days[0].slotList[0].outcome, SlotOutcome::Skipped);
    sample.block.weeks[0].kind = WeekKind::Deload;
    EXPECT_EQ(sample.beside().weeks[0].days[0].slotList[0].loads.size(), 1u);
}

}  // namespace
}  // namespace steelyard
