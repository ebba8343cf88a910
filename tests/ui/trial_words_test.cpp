#include "ui/format/trial_words.h"

#include <gtest/gtest.h>

#include <set>

namespace steelyard {
namespace {

const std::vector<QString> kNames{QStringLiteral("supinated"), QStringLiteral("B")};

Trial twoArms()
{
    Trial trial{.athlete = Id<Athlete>(1)};
    for (int i = 0; i < 2; ++i)
        trial.arms.push_back({.variant = Id<Variant>(1), .grip = Id<Grip>(i + 1), .standard = Id<RepStandard>(1)});
    return trial;
}

TEST(TrialWords, NameAnArmByItsLetterAndWhatTellsItApart)
{
    EXPECT_EQ(format::armTitle(kNames, 0), QStringLiteral("A (supinated)"));
    EXPECT_EQ(format::armTitle(kNames, 1), QStringLiteral("B"));
    EXPECT_EQ(format::armTitle(kNames, 3), QStringLiteral("D"));
}

TEST(TrialWords, HaveAShapeOfItsOwnForEveryWord)
{
    std::set<QString> shapes;
    for (const auto& row : EnumText<TrialWord>::table) shapes.insert(format::trialWordShape(row.value));
    EXPECT_EQ(shapes.size(), EnumText<TrialWord>::table.size());
    std::set<QString> states{format::trialShape(twoArms())};
    for (const auto& row : EnumText<TrialEnd>::table) {
        Trial trial = twoArms();
        trial.ending = TrialEnding{.date = QDate(2027, 3, 1), .kind = row.value};
        states.insert(format::trialShape(trial));
    }
    EXPECT_EQ(states.size(), 4U);
}

TEST(TrialWords, SayHowItEndedWithTheChoice)
{
    Trial trial = twoArms();
    EXPECT_EQ(format::trialState(trial, kNames), QStringLiteral("running"));
    trial.ending = TrialEnding{.date = QDate(2027, 3, 1), .kind = TrialEnd::Concluded, .choice = 0};
    EXPECT_TRUE(format::trialState(trial, kNames).contains(QStringLiteral("going on with A (supinated)")));
    trial.ending = TrialEnding{.date = QDate(2027, 3, 1), .kind = TrialEnd::Stopped, .reason = QStringLiteral("ill")};
    EXPECT_TRUE(format::trialState(trial, kNames).contains(QStringLiteral("stopped")));
    EXPECT_TRUE(format::trialState(trial, kNames).endsWith(QStringLiteral("ill")));
}

TEST(TrialWords, SayWhereItStandsWithoutAResult)
{
    TrialStanding standing;
    standing.arms = {{.done = 3, .missed = 1, .toCome = 2}, {.done = 4, .toCome = 2}};
    standing.wholeBlocks = 3;
    standing.next = TrialDay{.date = QDate(2027, 3, 8), .block = 4, .arm = 1};
    const QString words = format::standingWords(twoArms(), standing, kNames);
    EXPECT_TRUE(words.contains(QStringLiteral("A (supinated): 3 done, 1 missed, 2 to come.")));
    EXPECT_TRUE(words.contains(QStringLiteral("B: 4 done, 2 to come.")));
    EXPECT_TRUE(words.contains(QStringLiteral("Next: B on")));
    standing.next.reset();
    EXPECT_TRUE(format::standingWords(twoArms(), standing, kNames).contains(QStringLiteral("conclude it")));
}

TEST(TrialWords, NameTheJointTheRatingAndTheLimitOfAVeto)
{
    const Trial trial = twoArms();
    VetoedArm veto{.arm = 1, .since = QDate(2027, 3, 1), .sessionsRunning = true, .rating = 6, .joint = Joint::Elbow};
    const QString words = format::vetoWords(veto, trial, kNames);
    EXPECT_TRUE(words.contains(QStringLiteral("elbow")));
    EXPECT_TRUE(words.contains(QStringLiteral("rated 6 of 10")));
    EXPECT_TRUE(words.contains(QStringLiteral("limit is %1").arg(trial.limit.rating)));
    EXPECT_TRUE(format::painCaution().contains(QStringLiteral("no diagnosis")));
    veto.sessionsRunning = false;
    veto.chanceWorse = 0.86;
    EXPECT_TRUE(format::vetoWords(veto, trial, kNames).contains(QStringLiteral("86")));
}

TEST(TrialWords, CountTheRatingsThatAreMissingByDay)
{
    TrialStanding standing;
    EXPECT_TRUE(format::missingWords(standing).isEmpty());
    standing.missing = {{0, QDate(2027, 3, 1), QStringLiteral("tension")},
                        {0, QDate(2027, 3, 1), QStringLiteral("pump")}};
    const QString words = format::missingWords(standing);
    EXPECT_TRUE(words.startsWith(QStringLiteral("2 rating")));
    EXPECT_TRUE(words.contains(QStringLiteral("pump")));
}

}  // namespace
}  // namespace steelyard
