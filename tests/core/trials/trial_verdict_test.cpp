#include "core/trials/trial_verdict.h"

#include "tests/support/trial_kit.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::letterNames;
using testing_support::madeRecord;
using testing_support::madeTrial;
using testing_support::tension;

// Not the same twice running, and alike for both arms.
double unrest(std::size_t place)
{
    return place % 4 == 0 ? 1 : place % 4 == 3 ? -1 : 0;
}

TrialRecord apartBy(const Trial& trial, double difference)
{
    return madeRecord(trial, [&](const TrialDay& day, std::size_t i) {
        return tension(6 + (day.arm == 1 ? difference : 0) + unrest(i / trial.arms.size()));
    });
}

TrialVerdict verdictOf(const Trial& trial, const TrialRecord& record)
{
    return trialVerdict(trial, record, letterNames(trial));
}

void keepBlocks(const Trial& trial, TrialRecord& record, int blocks)
{
    std::erase_if(record.observations, [&](const TrialObservation& seen) { return seen.block > blocks; });
    record.asOf = record.observations.empty() ? trial.days.front().date : record.observations.back().date;
}

TEST(TrialVerdict, PrefersAnArmThatIsPlainlyBetterAndSaysWhatItRestsOn)
{
    const Trial trial = madeTrial({.blocks = 8});
    const TrialVerdict verdict = verdictOf(trial, apartBy(trial, 3));
    EXPECT_EQ(verdict.word, TrialWord::Prefer);
    EXPECT_EQ(verdict.arm, 1u);
    EXPECT_EQ(verdict.wholeBlocks, 8);
    EXPECT_TRUE(verdict.forCoach.contains(u"“B”")) << verdict.forCoach.toStdString();
    EXPECT_TRUE(verdict.forLifter.contains(u"“B”"));
    EXPECT_FALSE(verdict.forLifter.contains(u'%'));
    EXPECT_GE(verdict.restsOn.size(), 4u);
    EXPECT_TRUE(verdict.weights.contains(u"100 %"));
    EXPECT_TRUE(verdict.looks.isEmpty());
    EXPECT_TRUE(verdict.deviations.empty());
}

TEST(TrialVerdict, IsNeverCertainHoweverFarApartTheArms)
{
    const Trial trial = madeTrial({.blocks = 8});
    const TrialVerdict verdict = verdictOf(trial, apartBy(trial, 3));
    EXPECT_GT(verdict.look.chanceBest, 0.99);
    EXPECT_TRUE(verdict.forCoach.contains(u"over 99 %")) << verdict.forCoach.toStdString();
}

TEST(TrialVerdict, PrefersTheOtherArmWhenTheSignTurns)
{
    const Trial trial = madeTrial({.blocks = 8});
    const TrialVerdict verdict = verdictOf(trial, apartBy(trial, -3));
    EXPECT_EQ(verdict.word, TrialWord::Prefer);
    EXPECT_EQ(verdict.arm, 0u);
}

TEST(TrialVerdict, OfAlikeArmsIsNoClearDifference)
{
    const Trial trial = madeTrial({.blocks = 8});
    const TrialVerdict verdict = verdictOf(trial, apartBy(trial, 0));
    EXPECT_EQ(verdict.word, TrialWord::NoClearDifference);
    EXPECT_FALSE(verdict.arm);
}

TEST(TrialVerdict, SaysNothingOfThreeBlocksHoweverClearTheyLook)
{
    const Trial trial = madeTrial({.blocks = 8});
    TrialRecord record = apartBy(trial, 5);
    keepBlocks(trial, record, 3);
    const TrialVerdict verdict = verdictOf(trial, record);
    EXPECT_EQ(verdict.word, TrialWord::NothingYet);
    EXPECT_EQ(verdict.reason, u"too_few_blocks");
    EXPECT_EQ(verdict.restsOn.size(), 1u);  // no numbers to read a result from
}

TEST(TrialVerdict, OfTwoSessionsSaysNothing)
{
    const Trial trial = madeTrial({.blocks = 1});
    EXPECT_EQ(verdictOf(trial, apartBy(trial, 9)).word, TrialWord::NothingYet);
    TrialRecord none;
    none.asOf = trial.days.front().date;
    EXPECT_EQ(verdictOf(trial, none).word, TrialWord::NothingYet);
}

TEST(TrialVerdict, SaysAboutHowManySessionsMoreAreNeeded)
{
    const Trial trial = madeTrial({.blocks = 12});
    TrialRecord record = apartBy(trial, 0.9);
    keepBlocks(trial, record, 4);
    const TrialVerdict verdict = verdictOf(trial, record);
    EXPECT_EQ(verdict.word, TrialWord::NeedsMore) << verdict.forCoach.toStdString();
    ASSERT_TRUE(verdict.moreSessions);
    EXPECT_GT(*verdict.moreSessions, 0);
    EXPECT_LE(*verdict.moreSessions, 16);
}

TEST(TrialVerdict, DiscomfortStopsATrialOfTwoHoweverGoodTheArm)
{
    const Trial trial = madeTrial({.blocks = 8});
    TrialRecord record = apartBy(trial, 4);
    for (TrialObservation& seen : record.observations)
        seen.discomfort[static_cast<std::size_t>(Joint::Elbow)] = seen.done == 1u ? 6 : 0;
    const TrialVerdict verdict = verdictOf(trial, record);
    EXPECT_EQ(verdict.word, TrialWord::Discomfort);
    EXPECT_FALSE(verdict.arm);
    EXPECT_TRUE(verdict.forCoach.contains(u"elbow"));
}

TEST(TrialVerdict, OfThreeArmsGoesOnWithoutTheOneThatHurts)
{
    const Trial trial = madeTrial({.arms = 3, .blocks = 8});
    TrialRecord record = madeRecord(trial, [](const TrialDay& day, std::size_t i) {
        return tension((day.arm == 2 ? 9.0 : day.arm == 1 ? 8.0 : 4.0) + unrest(i / 3));
    });
    for (TrialObservation& seen : record.observations)
        seen.discomfort[static_cast<std::size_t>(Joint::Elbow)] = seen.done == 2u ? 6 : 0;
    const TrialVerdict verdict = verdictOf(trial, record);
    EXPECT_EQ(verdict.word, TrialWord::Prefer);
    EXPECT_EQ(verdict.arm, 1u);  // the best of those that are left
    ASSERT_EQ(verdict.out.size(), 1u);
    EXPECT_TRUE(verdict.forCoach.contains(u"“C” is out"));
}

TEST(TrialVerdict, NeverTrustsArmsSwappedHalfWay)
{
    const Trial trial = madeTrial({.blocks = 8});
    TrialRecord record = apartBy(trial, 0);
    for (std::size_t i = 0; i < record.observations.size(); ++i) {
        TrialObservation& seen = record.observations[i];
        if (i >= 8) seen.done = 1 - seen.drawn;
        seen.values = tension(*seen.done == 1 ? 9 : 4);
    }
    const TrialVerdict verdict = verdictOf(trial, record);
    EXPECT_EQ(verdict.word, TrialWord::NothingYet);
    EXPECT_EQ(verdict.reason, u"order_not_kept");
}

// Four sessions drawn for A were done as B, and these four are what makes B look good.
TEST(TrialVerdict, DoesNotPreferWhereWhatWasDrawnPointsElsewhere)
{
    const Trial trial = madeTrial({.blocks = 8});
    TrialRecord record = apartBy(trial, 0);
    int swapped = 0;
    for (TrialObservation& seen : record.observations) {
        const bool swap = seen.drawn == 0 && swapped < 4;
        swapped += swap ? 1 : 0;
        if (swap) seen.done = 1;
        seen.values = tension(swap ? 8.4 : seen.drawn == 0 ? 4.6 : 6.2);
    }
    const TrialVerdict verdict = verdictOf(trial, record);
    EXPECT_EQ(verdict.look.says, LookSays::Prefer);
    EXPECT_EQ(verdict.word, TrialWord::NoClearDifference);
    EXPECT_EQ(verdict.reason, u"ways_disagree");
}

TEST(TrialVerdict, OfAnArmThatWasNeverDoneSaysNothing)
{
    const Trial trial = madeTrial({.blocks = 8});
    TrialRecord record = apartBy(trial, 3);
    for (TrialObservation& seen : record.observations)
        if (seen.drawn == 1) {
            seen.done.reset();
            seen.doneOn.reset();
            seen.missed = true;
            seen.values.clear();
        }
    const TrialVerdict verdict = verdictOf(trial, record);
    EXPECT_EQ(verdict.word, TrialWord::NothingYet);
    EXPECT_EQ(verdict.reason, u"one_arm_only");
}

TEST(TrialVerdict, OfEqualRatingsIsNoClearDifferenceAndSaysWhy)
{
    const Trial trial = madeTrial({.blocks = 8});
    const auto record = madeRecord(trial, [](const TrialDay&, std::size_t) { return tension(7); });
    const TrialVerdict verdict = verdictOf(trial, record);
    EXPECT_EQ(verdict.word, TrialWord::NoClearDifference);
    EXPECT_EQ(verdict.reason, u"all_equal");
}

TEST(TrialVerdict, OfMissingRatingsSaysThatTheyAreMissing)
{
    const Trial trial = madeTrial({.blocks = 8});
    const auto none = madeRecord(trial, [](const TrialDay&, std::size_t) { return std::vector<OutcomeValue>{}; });
    EXPECT_EQ(verdictOf(trial, none).reason, u"too_few_values");
    const auto few = madeRecord(trial, [](const TrialDay& day, std::size_t i) {
        return day.arm == 1 && i > 4 ? std::vector<OutcomeValue>{} : tension(day.arm == 1 ? 9 : 3);
    });
    EXPECT_EQ(verdictOf(trial, few).word, TrialWord::NothingYet);
}

TEST(TrialVerdict, WithoutAWeightThatCanBeWeighedSaysSo)
{
    Trial trial = madeTrial({.blocks = 8});
    trial.outcomes = {{QStringLiteral("performance"), 1}, {QStringLiteral("of_a_newer_program"), 1}};
    EXPECT_EQ(verdictOf(trial, apartBy(trial, 3)).reason, u"nothing_weighs");
}

TEST(TrialVerdict, SaysThatSomebodyLooked)
{
    Trial trial = madeTrial({.blocks = 8});
    trial.looks = {{trial.days[9].date, 10}};
    EXPECT_FALSE(verdictOf(trial, apartBy(trial, 3)).looks.isEmpty());
}

TEST(TrialVerdict, OfATrialThatTheCoachEndedForDiscomfortIsThatWord)
{
    Trial trial = madeTrial({.blocks = 8});
    trial.ending = TrialEnding{trial.days[4].date, TrialEnd::Discomfort};
    TrialRecord record = apartBy(trial, 3);
    keepBlocks(trial, record, 2);
    EXPECT_EQ(verdictOf(trial, record).word, TrialWord::Discomfort);
}

TEST(TrialVerdict, ABlockIsWholeWhenAllOfItsDaysArePast)
{
    const Trial trial = madeTrial({.blocks = 8});
    TrialRecord record = apartBy(trial, 1);
    keepBlocks(trial, record, 5);
    EXPECT_EQ(wholeBlocks(trial, record), 5);
    record.observations.pop_back();
    EXPECT_EQ(wholeBlocks(trial, record), 4);
}

}  // namespace
}  // namespace steelyard
