#include "core/domain/trial.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

TrialArm anArm()
{
    return {.variant = Id<Variant>(1), .grip = Id<Grip>(1), .standard = Id<RepStandard>(1), .band = {8, 12}};
}

Trial aTrial()
{
    Trial trial{.athlete = Id<Athlete>(1)};
    trial.question = QStringLiteral("Supinated or neutral?");
    trial.designedOn = QDate(2027, 1, 4);
    trial.arms = {anArm(), anArm()};
    trial.outcomes = {{QStringLiteral("tension"), 1.0}};
    trial.days = {{.date = QDate(2027, 1, 5), .block = 1, .arm = 1}, {.date = QDate(2027, 1, 8), .block = 1, .arm = 0}};
    return trial;
}

bool complainsOf(const Trial& trial, QStringView field)
{
    return std::ranges::any_of(validate(trial), [&](const Problem& problem) { return problem.field == field; });
}

TEST(Trial, OfTwoArmsWithADrawnScheduleIsSound)
{
    EXPECT_TRUE(validate(aTrial()).empty());
}

TEST(Trial, HasTwoToFourArms)
{
    Trial trial = aTrial();
    trial.arms.assign(5, anArm());
    EXPECT_TRUE(complainsOf(trial, u"arms"));
    trial.arms.assign(4, anArm());
    EXPECT_FALSE(complainsOf(trial, u"arms"));
    trial.arms.assign(1, anArm());
    EXPECT_TRUE(complainsOf(trial, u"arms"));
}

TEST(Trial, NeedsAnOutcomeThatWeighs)
{
    Trial trial = aTrial();
    trial.outcomes = {{QStringLiteral("tension"), 0.0}};
    EXPECT_TRUE(complainsOf(trial, u"outcomes"));
    trial.outcomes = {{QStringLiteral("tension"), 1.0}, {QStringLiteral("tension"), 1.0}};
    EXPECT_TRUE(complainsOf(trial, u"outcomes"));
}

TEST(Trial, HasItsSessionsByDateOneADayEachWithAnArmOfIts)
{
    Trial trial = aTrial();
    trial.days[1].date = trial.days[0].date;
    EXPECT_TRUE(complainsOf(trial, u"days"));
    trial = aTrial();
    trial.days[0].arm = 2;
    EXPECT_TRUE(complainsOf(trial, u"days"));
    trial = aTrial();
    trial.days[0].missed = true;
    EXPECT_FALSE(complainsOf(trial, u"days"));
    trial.days[0].armDone = 0;
    EXPECT_TRUE(complainsOf(trial, u"days"));
}

TEST(Trial, IsStoppedForAReasonAndChoosesAnArmOfItsOwn)
{
    Trial trial = aTrial();
    trial.ending = TrialEnding{.date = QDate(2027, 2, 1), .kind = TrialEnd::Stopped};
    EXPECT_TRUE(complainsOf(trial, u"ending"));
    trial.ending->reason = QStringLiteral("moved away");
    EXPECT_FALSE(complainsOf(trial, u"ending"));
    trial.ending->choice = 2;
    EXPECT_TRUE(complainsOf(trial, u"ending"));
}

TEST(Trial, NamesItsArmsByLetters)
{
    EXPECT_EQ(armLetter(0), QStringLiteral("A"));
    EXPECT_EQ(armLetter(3), QStringLiteral("D"));
}

TEST(Trial, KnowsItsArmsByLetters)
{
    EXPECT_EQ(armOfLetter(u"A"), 0U);
    EXPECT_EQ(armOfLetter(u"d"), 3U);
    for (const char16_t* none : {u"E", u"", u"AB", u"@", u"ä"}) EXPECT_EQ(armOfLetter(none), std::nullopt);
    for (std::size_t arm = 0; arm < kMostArms; ++arm) EXPECT_EQ(armOfLetter(armLetter(arm)), arm);
}

TEST(Trial, FindsTheSessionOfADay)
{
    const Trial trial = aTrial();
    ASSERT_TRUE(dayOfTrial(trial, QDate(2027, 1, 8)));
    EXPECT_EQ(dayOfTrial(trial, QDate(2027, 1, 8))->arm, 0U);
    EXPECT_FALSE(dayOfTrial(trial, QDate(2027, 1, 6)));
}

}  // namespace
}  // namespace steelyard
