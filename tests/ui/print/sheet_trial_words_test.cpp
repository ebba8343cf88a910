#include "ui/print/sheet_trial_words.h"

#include "core/trials/trial_outcomes.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

SheetExercise exerciseInATrial()
{
    SheetExercise exercise;
    exercise.trial = SheetTrial{};
    exercise.trial->arm = 1;
    exercise.trial->armName = QStringLiteral("neutral, medium");
    exercise.trial->session = 5;
    exercise.trial->sessions = 12;
    exercise.trial->asked = {QStringLiteral("tension"), QStringLiteral("next_soreness"), QStringLiteral("pump")};
    return exercise;
}

TEST(SheetTrialWords, SayTheArmAndTheSession)
{
    EXPECT_EQ(trialWords(exerciseInATrial()), QStringLiteral("Trial: arm B (neutral, medium) today, session 5 of 12."));
    EXPECT_EQ(trialWordsShort(exerciseInATrial()), QStringLiteral("Trial: arm B (neutral, medium)"));
    EXPECT_EQ(trialWords(SheetExercise()), QString());
    EXPECT_EQ(trialAskWords(SheetExercise()), QString());
}

TEST(SheetTrialWords, AskWhatTheTrialLooksAtWithoutWhatTheDayAfterShows)
{
    const QString asked = trialAskWords(exerciseInATrial());
    for (const char* key : {"tension", "pump", "discomfort"})
        EXPECT_TRUE(asked.contains(findOutcome(QString::fromLatin1(key))->question())) << key;
    for (const char* key : {"burn", "next_soreness"})
        EXPECT_FALSE(asked.contains(findOutcome(QString::fromLatin1(key))->question())) << key;
    EXPECT_EQ(trialAskWordsShort(exerciseInATrial()),
              QStringLiteral("Ask in the same words every time: Tension in the target · Pump · Discomfort in a joint"));
}

TEST(SheetTrialWords, SayThatASessionDoesNotCountAndHowItIsLowered)
{
    SheetExercise exercise = exerciseInATrial();
    exercise.trial->counts = false;
    exercise.trial->loweringSeconds = Decimal::parse(u"3.50");
    EXPECT_EQ(trialWords(exercise), QStringLiteral("Trial: arm B (neutral, medium) today, session 5 of 12. Lower it in "
                                                   "3.5 s. To get used to it: this session doesn't count."));
}

TEST(SheetTrialWords, NameTheDrawnArmWhereAnotherIsDone)
{
    SheetExercise exercise = exerciseInATrial();
    exercise.trial->drawn = 0;
    exercise.trial->drawnName = QStringLiteral("supinated, medium");
    EXPECT_EQ(trialWords(exercise),
              QStringLiteral("Trial: today arm A (supinated, medium) was drawn; this lift is arm B."));
    EXPECT_EQ(trialWordsShort(exercise), QStringLiteral("Trial: arm B, drawn was A"));
}

}  // namespace
}  // namespace steelyard
