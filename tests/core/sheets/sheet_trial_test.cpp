// A trial's session on the sheet: the drawn arm stands there whatever the day was made from.
#include "core/sheets/sheet_trial.h"

#include "core/planning/trial_in_block.h"
#include "core/sheets/sheets_for_day.h"
#include "tests/support/sheet_samples.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::SheetSample;

const QDate kTrialDay(2027, 3, 8);

// Curls with two grips; today the second one was drawn.
class SheetTrials : public testing::Test {
protected:
    SheetTrials()
    {
        sample.library.grips.push_back({Id<Grip>(77), QUuid(), {QStringLiteral("neutral, medium"), {}, {}, {}}});
        const LiftLine& curl = sample.log.lines[sample.curl].line;
        Trial trial{.athlete = sample.log.athlete.id};
        trial.question = QStringLiteral("Supinated or neutral?");
        trial.designedOn = kTrialDay.addDays(-10);
        trial.arms = {{.variant = curl.variant, .grip = curl.grip, .standard = curl.standard, .band = {8, 12}},
                      {.variant = curl.variant, .grip = Id<Grip>(77), .standard = curl.standard, .band = {6, 9}}};
        trial.outcomes = {{QStringLiteral("tension"), 1}, {QStringLiteral("pump"), 0}};
        trial.sets = 4;
        trial.plannedRir = Decimal(1);
        trial.blocks = 1;
        trial.days = {{kTrialDay.addDays(-7), 0, 0}, {kTrialDay.addDays(-4), 1, 0}, {kTrialDay, 1, 1}};
        sample.log.trials = {{Id<Trial>(1), QUuid(), trial}};
        EXPECT_EQ(neutral, (LiftLine{curl.athlete, curl.variant, Id<Grip>(77), curl.standard}));
    }
    [[nodiscard]] Trial& trial() { return sample.log.trials[0].value; }
    [[nodiscard]] std::optional<SessionSheet> sheetOn(QDate date = kTrialDay) const
    {
        return buildSessionSheet(sample.log, sample.library, sample.gym, date);
    }

    SheetSample sample;
    LiftLine neutral{Id<Athlete>(1), Id<Variant>(1), Id<Grip>(77), Id<RepStandard>(1)};
};

TEST_F(SheetTrials, SayTheArmOfTheDayAndWhatIsAskedAfterIt)
{
    sample.plan(kTrialDay, {sample.squat});
    Slot planned = slotOfArm(trial(), 1);
    planned.sets = 2;  // the plan's own word stands
    auto& slotList = sample.log.blocks[0].value.weeks[0].days[0].slotList;
    slotList.insert(slotList.begin(), planned);
    const auto sheet = sheetOn();
    ASSERT_TRUE(sheet);
    ASSERT_EQ(sheet->exercises.size(), 2U);
    const SheetExercise& curl = sheet->exercises[0];
    ASSERT_TRUE(curl.trial);
    EXPECT_EQ(curl.trial->arm, 1U);
    EXPECT_EQ(curl.trial->armName, QStringLiteral("neutral, medium"));
    EXPECT_FALSE(curl.trial->drawn);
    EXPECT_TRUE(curl.trial->counts);
    EXPECT_EQ(curl.trial->session, 3);
    EXPECT_EQ(curl.trial->sessions, 3);
    EXPECT_EQ(curl.trial->asked, (std::vector{QStringLiteral("tension"), QStringLiteral("pump")}));
    EXPECT_EQ(curl.sets, 2);
    EXPECT_FALSE(sheet->exercises[1].trial);
}

TEST_F(SheetTrials, PutTheArmInThePlaceOfTheSameExerciseOfAnEarlierSession)
{
    sample.done(sample.squat, kTrialDay.addDays(-7), {{u"80", 9}});
    sample.done(sample.curl, kTrialDay.addDays(-7), {{u"40", 10}, {u"40", 9}});
    const auto sheet = sheetOn();
    ASSERT_TRUE(sheet);
    EXPECT_EQ(sheet->source, SheetSource::SameWeekday);
    ASSERT_EQ(sheet->exercises.size(), 2U);
    const auto arm = std::ranges::find(sheet->exercises, neutral, &SheetExercise::lift);
    ASSERT_NE(arm, sheet->exercises.end());
    EXPECT_EQ(arm->sets, 4);
    EXPECT_EQ(arm->band, (RepBand{6, 9}));
    EXPECT_EQ(arm->target.reserve, 1.0);
}

TEST_F(SheetTrials, MakeASheetOfTheArmAloneAndExpectTheLifter)
{
    const auto sheet = sheetOn();
    ASSERT_TRUE(sheet);
    EXPECT_EQ(sheet->source, SheetSource::TrialAlone);
    ASSERT_EQ(sheet->exercises.size(), 1U);
    EXPECT_EQ(sheet->exercises[0].lift, neutral);
    EXPECT_TRUE(isExpected(sample.log, kTrialDay));
    EXPECT_FALSE(isExpected(sample.log, kTrialDay.addDays(1)));
}

TEST_F(SheetTrials, SayThatGettingUsedToItDoesNotCount)
{
    const auto sheet = sheetOn(kTrialDay.addDays(-7));
    ASSERT_TRUE(sheet && sheet->exercises.at(0).trial);
    EXPECT_FALSE(sheet->exercises[0].trial->counts);
}

TEST_F(SheetTrials, AreSilentAfterTheEndAndOnAMissedDay)
{
    trial().days[2].missed = true;
    EXPECT_FALSE(sheetOn());
    trial().days[2].missed = false;
    trial().ending = TrialEnding{kTrialDay, TrialEnd::Stopped, QStringLiteral("holiday"), {}};
    EXPECT_FALSE(sheetOn());
    trial().ending->date = kTrialDay.addDays(1);
    EXPECT_TRUE(sheetOn());
}

TEST_F(SheetTrials, NameTheDrawnArmBesideTheLiftOfAnother)
{
    const LiftLine& supinated = sample.log.lines[sample.curl].line;
    const auto other = sheetTrialOf(sample.log, sample.library, supinated, kTrialDay);
    ASSERT_TRUE(other);
    EXPECT_EQ(other->arm, 0U);
    EXPECT_EQ(other->drawn, 1U);
    EXPECT_EQ(other->drawnName, QStringLiteral("neutral, medium"));
    EXPECT_FALSE(sheetTrialOf(sample.log, sample.library, sample.log.lines[sample.squat].line, kTrialDay));
}

TEST_F(SheetTrials, OfRepBandsTakeTheDrawnBandOfTheOneLift)
{
    trial().factor = TrialFactor::RepBand;
    trial().arms[1].grip = trial().arms[0].grip;
    sample.done(sample.curl, kTrialDay.addDays(-7), {{u"40", 10}});
    const auto sheet = sheetOn();
    ASSERT_TRUE(sheet && sheet->exercises.at(0).trial);
    EXPECT_EQ(sheet->exercises[0].trial->arm, 1U);
    EXPECT_EQ(sheet->exercises[0].band, (RepBand{6, 9}));
    EXPECT_EQ(sheet->exercises[0].trial->armName, QStringLiteral("6 to 9 repetitions"));
}

}  // namespace
}  // namespace steelyard
