#include "core/planning/slot_load.h"

#include "tests/support/planning_sample.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::kg;
using testing_support::PlanningSample;

SlotLoad planned(PlanningSample& sample, const Slot& slot, WeekKind week = WeekKind::Normal,
                 const RuleSettings& settings = {})
{
    SlotLoads loads(sample.input(settings));
    return loads.plan({slot, sample.today, week, {}, {slot.plannedRir->toDouble()}});
}

TEST(SlotLoad, ALoadComesWithTargetsThatAreReachedThreeTimesInFour)
{
    PlanningSample sample;
    sample.steady(sample.curl, u"40", 10, 16);
    const SlotLoad load = planned(sample, sample.slotOf(sample.curl));
    EXPECT_EQ(load.basis, LoadBasis::OwnRecord);
    ASSERT_TRUE(load.load && load.chance && load.within80);
    EXPECT_EQ(load.load->kilograms(), 40);
    ASSERT_EQ(load.targetReps.size(), 3u);
    EXPECT_NEAR(*load.chance, 0.75, 0.15);  // a repetition is worth so much
    EXPECT_GE(load.targetReps[0], load.targetReps[2]);
    EXPECT_LT(load.within80->low, 10);
    EXPECT_GT(load.within80->high, 10);
    EXPECT_TRUE(load.why.contains(QStringLiteral("of 100"))) << load.why.toStdString();
}

TEST(SlotLoad, TheCoachMaySayHowOftenATargetIsToBeReached)
{
    PlanningSample sample;
    sample.steady(sample.curl, u"40", 10, 16);
    const auto at = [&](double percent) {
        return planned(sample, sample.slotOf(sample.curl), WeekKind::Normal,
                       {{{QStringLiteral("slot_load"), QStringLiteral("percent")}, percent}});
    };
    EXPECT_GT(at(95).chance.value(), at(75).chance.value());
    EXPECT_LT(at(50).chance.value(), at(75).chance.value());
    EXPECT_LT(at(95).targetReps.front(), at(50).targetReps.front());
}

TEST(SlotLoad, OneMoreRepetitionOrAPlateIsChosenByWhatIsLikely)
{
    PlanningSample sample;
    sample.steady(sample.curl, u"40", 13, 16);
    const SlotLoad more = planned(sample, sample.slotOf(sample.curl));
    EXPECT_EQ(more.kind, StepKind::AddLoad);
    EXPECT_EQ(more.load.value().kilograms(), 42.5);
    PlanningSample other;
    other.steady(other.curl, u"40", 9, 16);
    EXPECT_EQ(planned(other, other.slotOf(other.curl)).load.value().kilograms(), 40);
    // The same record by the rule that takes the plate first.
    Slot byStep = other.slotOf(other.curl, {5, 12});
    byStep.progression = QStringLiteral("load_by_step");
    EXPECT_EQ(planned(other, byStep).load.value().kilograms(), 42.5);
}

TEST(SlotLoad, AStepOverATenthIsTakenOnlyWhereNoneIsSmallerAndSaysSo)
{
    PlanningSample sample;
    sample.steady(sample.pulldown, u"20", 24, 16);
    Slot slot = sample.slotOf(sample.pulldown, {8, 20});
    const SlotLoad load = planned(sample, slot);
    EXPECT_EQ(load.load.value().kilograms(), 25);
    EXPECT_TRUE(load.why.contains(QStringLiteral("25 %"))) << load.why.toStdString();
}

TEST(SlotLoad, AnEasierWeekTakesTheBlocksShareOfTheLastWorkingLoad)
{
    PlanningSample sample;
    sample.steady(sample.curl, u"40", 10, 16);
    const Slot slot = sample.slotOf(sample.curl);
    SlotLoads loads(sample.input());
    const auto at = [&](int percent) {
        return loads.plan({slot, sample.today, WeekKind::Deload, {50, percent, 2}, {4.0}}).load.value().kilograms();
    };
    EXPECT_EQ(at(90), 35);  // 36 can't be loaded
    EXPECT_EQ(at(80), 32.5);
    EXPECT_EQ(at(100), 40);
}

TEST(SlotLoad, ALineThatWasNeverDoneStartsFromARelatedOneWithAWiderInterval)
{
    PlanningSample sample;
    sample.steady(sample.curl, u"40", 10, 16);
    // The same variant with another grip.
    sample.library.grips.push_back({Id<Grip>(90), {}, {QStringLiteral("pronated, medium"), {}, {}, {}}});
    Slot slot = sample.slotOf(sample.curl);
    slot.grip = Id<Grip>(90);
    const SlotLoad own = planned(sample, sample.slotOf(sample.curl));
    const SlotLoad related = planned(sample, slot);
    EXPECT_EQ(related.basis, LoadBasis::OtherGrip);
    ASSERT_TRUE(related.load && related.within80);
    EXPECT_LT(related.load->kilograms(), 40);
    EXPECT_GT(related.within80->high - related.within80->low, 1.5 * (own.within80->high - own.within80->low));
    EXPECT_TRUE(related.why.contains(QStringLiteral("Arm curl"))) << related.why.toStdString();
}

TEST(SlotLoad, TheClosestRelatedLineIsTakenAndLoadsOfAnotherKindNever)
{
    PlanningSample sample;
    sample.steady(sample.squat, u"100", 10, 16);
    // Another exercise for the same muscle, with the same implement, and one whose load is written per hand.
    const Id<Muscle> quads(7);
    for (auto& row : sample.library.exercises) row.value.shares = {{quads, 1.0}};
    for (auto& line : sample.log.lines) line.exercise.value.shares = {{quads, 1.0}};
    EXPECT_EQ(planned(sample, sample.slotOf(sample.curl)).basis, LoadBasis::SameMuscle);
    EXPECT_EQ(planned(sample, sample.slotOf(sample.dumbbell)).basis, LoadBasis::Nothing);
    // Long ago is no record to start from.
    sample.today = sample.today.addDays(kRelatedDays);
    EXPECT_EQ(planned(sample, sample.slotOf(sample.curl)).basis, LoadBasis::Nothing);
}

TEST(SlotLoad, WithNothingToStartFromASetIsBuiltUpTo)
{
    PlanningSample sample;
    const SlotLoad load = planned(sample, sample.slotOf(sample.curl));
    EXPECT_EQ(load.basis, LoadBasis::Nothing);
    EXPECT_FALSE(load.load);
    EXPECT_FALSE(load.chance);
    EXPECT_TRUE(load.why.contains(QStringLiteral("build up"))) << load.why.toStdString();
}

TEST(SlotLoad, TheCoachsLockedLoadStaysAndHasItsChances)
{
    PlanningSample sample;
    sample.steady(sample.curl, u"40", 10, 16);
    Slot slot = sample.slotOf(sample.curl);
    slot.load = kg(u"45");
    slot.loadLocked = true;
    const SlotLoad load = planned(sample, slot);
    EXPECT_EQ(load.load, slot.load);
    EXPECT_LT(load.targetReps.at(0), 9);
    EXPECT_TRUE(load.chance);
}

TEST(SlotLoad, ARecordWithoutLoadsGoesByTheRuleAloneAndSaysThatNoChanceIsKnown)
{
    PlanningSample sample;
    for (int week = 6; week >= 1; --week)
        sample.done(sample.curl, sample.today.addDays(-7 * week), {{u"0", 12}, {u"0", 12}});
    const SlotLoad load = planned(sample, sample.slotOf(sample.curl));
    EXPECT_EQ(load.basis, LoadBasis::OwnRecord);
    EXPECT_TRUE(load.load);
    EXPECT_FALSE(load.chance);
}

TEST(SlotLoad, EveryLoadCanBeLoaded)
{
    for (const int reps : {6, 9, 12, 15})
        for (const char16_t* rule : {u"band_then_load", u"load_by_step", u"effort_ramp", u"hold"}) {
            PlanningSample sample;
            sample.steady(sample.curl, u"40", reps, 12);
            sample.steady(sample.dumbbell, u"18", reps, 12);
            sample.steady(sample.pulldown, u"55", reps, 12);
            for (const std::size_t line : {sample.curl, sample.dumbbell, sample.pulldown})
                for (const WeekKind week : {WeekKind::Normal, WeekKind::Deload}) {
                    Slot slot = sample.slotOf(line);
                    slot.progression = QString::fromUtf16(rule);
                    const SlotLoad load = planned(sample, slot, week);
                    ASSERT_TRUE(load.load);
                    const Variant& variant = sample.log.lines[line].variant.value;
                    EXPECT_TRUE(nearestLoadable(load.load->mass(), variant, &sample.gym, MassUnit::kg).exact)
                        << load.load->toString().toStdString();
                }
        }
}

}  // namespace
}  // namespace steelyard
