#include "core/trials/earlier_trials.h"

#include "core/trials/roster_wins.h"
#include "tests/support/trial_kit.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::letterNames;
using testing_support::madeRecord;
using testing_support::madeTrial;
using testing_support::tension;

JudgedTrial judged(double difference, std::uint64_t seed, int daysEarlier)
{
    Trial trial = madeTrial({.blocks = 8, .seed = seed});
    trial.designedOn = trial.designedOn.addDays(-daysEarlier);
    const auto record = madeRecord(trial, [&](const TrialDay& day, std::size_t i) {
        return tension(6 + (day.arm == 1 ? difference : 0) + (i % 4 < 2 ? 0.8 : -0.8));
    });
    return {trial, trialVerdict(trial, record, letterNames(trial))};
}

TEST(EarlierTrials, ThatAgreeArePutTogetherAndAreSurer)
{
    const JudgedTrial now = judged(1.5, 1, 0);
    const EarlierTrials found =
        earlierTrials(now.trial, now.verdict, {judged(1.3, 2, 200), now}, letterNames(now.trial));
    ASSERT_EQ(found.pairs.size(), 1u);
    const EarlierPair& pair = found.pairs[0];
    EXPECT_EQ(pair.trials.size(), 2u);  // the earlier one and this one, once
    EXPECT_LT(pair.trials.front().designedOn, pair.trials.back().designedOn);
    ASSERT_TRUE(pair.together);
    EXPECT_LT(pair.together->high90 - pair.together->low90, pair.trials[0].high90 - pair.trials[0].low90);
    EXPECT_GT(pair.together->mean, std::min(pair.trials[0].mean, pair.trials[1].mean));
    EXPECT_LT(pair.together->mean, std::max(pair.trials[0].mean, pair.trials[1].mean));
    EXPECT_FALSE(found.sentence.isEmpty());
}

// What was expected beforehand pulls every trial towards nothing; put together, it would do so once for each.
TEST(EarlierTrials, StandAsTheirValuesAloneSayThem)
{
    const JudgedTrial now = judged(1.5, 1, 0);
    const EarlierTrials found = earlierTrials(now.trial, now.verdict, {judged(1.5, 2, 200)}, letterNames(now.trial));
    ASSERT_EQ(found.pairs.size(), 1u);
    const auto& arms = now.verdict.done.answer->arms;
    EXPECT_NEAR(found.pairs[0].trials.back().mean, *arms[1].mean - *arms[0].mean, 0.05);
    EXPECT_LT(now.verdict.done.answer->difference(1, 0)->mean, found.pairs[0].trials.back().mean - 0.1);
}

TEST(EarlierTrials, ThatContradictEachOtherAreNotPutTogether)
{
    const JudgedTrial now = judged(3, 1, 0);
    const EarlierTrials found = earlierTrials(now.trial, now.verdict, {judged(-3, 2, 200)}, letterNames(now.trial));
    ASSERT_EQ(found.pairs.size(), 1u);
    EXPECT_FALSE(found.pairs[0].alike);
    EXPECT_FALSE(found.pairs[0].together);
    EXPECT_LT(found.pairs[0].heterogeneityP.value(), 0.1);
}

TEST(EarlierTrials, OfAnotherQuestionArePassedOver)
{
    const JudgedTrial now = judged(1, 1, 0);
    JudgedTrial otherFactor = judged(1, 2, 100);
    otherFactor.trial.factor = TrialFactor::Lowering;
    JudgedTrial otherArm = judged(1, 3, 100);
    otherArm.trial.arms[0].grip = Id<Grip>(99);
    JudgedTrial otherWeights = judged(1, 4, 100);
    otherWeights.trial.outcomes = {{QStringLiteral("pump"), 1}};
    const EarlierTrials found =
        earlierTrials(now.trial, now.verdict, {otherFactor, otherArm, otherWeights}, letterNames(now.trial));
    EXPECT_TRUE(found.pairs.empty());
    EXPECT_TRUE(found.sentence.isEmpty());
}

TEST(EarlierTrials, WithArmsInAnotherOrderKeepTheirSign)
{
    const JudgedTrial now = judged(2, 1, 0);
    JudgedTrial turned = judged(-2, 2, 100);
    std::swap(turned.trial.arms[0], turned.trial.arms[1]);
    const EarlierTrials found = earlierTrials(now.trial, now.verdict, {turned}, letterNames(now.trial));
    ASSERT_EQ(found.pairs.size(), 1u);
    EXPECT_GT(found.pairs[0].trials[0].mean, 1);
    EXPECT_TRUE(found.pairs[0].alike);
}

Library gripsOfTrial()
{
    Library library;
    library.grips = {{Id<Grip>(1), {}, {QStringLiteral("under"), HandOrientation::Supinated, {}, {}}},
                     {Id<Grip>(2), {}, {QStringLiteral("side"), HandOrientation::Neutral, {}, {}}}};
    return library;
}

TEST(RosterWins, CountWhatEndedTrialsPreferred)
{
    std::vector<JudgedTrial> trials;
    for (const double difference : {3.0, 3.0, -3.0, 0.0}) {
        trials.push_back(judged(difference, trials.size() + 1, 0));
        trials.back().trial.ending = TrialEnding{trials.back().trial.days.back().date, TrialEnd::Concluded};
    }
    trials.push_back(judged(3, 9, 0));  // still running
    const auto wins = rosterWins(trials, TrialFactor::Grip, gripsOfTrial());
    ASSERT_EQ(wins.size(), 2u);
    const auto neutral = std::ranges::find(wins, QStringLiteral("neutral"), &ArmWins::kind);
    ASSERT_NE(neutral, wins.end());
    EXPECT_EQ(neutral->trials, 4);
    EXPECT_EQ(neutral->won, 2);
    EXPECT_EQ(neutral->lost, 1);
    EXPECT_NEAR(neutral->byChance, 1.5, 1e-12);
    // Beta(3, 3): mean one half; R's qbeta(c(.05, .95), 3, 3) is 0.18926 and 0.81074.
    EXPECT_NEAR(neutral->share.mean, 0.5, 1e-12);
    EXPECT_NEAR(neutral->share.low, 0.18926, 1e-4);
    EXPECT_NEAR(neutral->share.high, 0.81074, 1e-4);
    EXPECT_TRUE(rosterWins(trials, TrialFactor::Lowering, gripsOfTrial()).empty());
}

TEST(RosterWins, KindsThatTwoArmsShareSayNothing)
{
    Library library = gripsOfTrial();
    library.grips[1].value.orientation = HandOrientation::Supinated;
    JudgedTrial trial = judged(3, 1, 0);
    trial.trial.ending = TrialEnding{trial.trial.days.back().date, TrialEnd::Concluded};
    EXPECT_TRUE(rosterWins({trial}, TrialFactor::Grip, library).empty());
}

}  // namespace
}  // namespace steelyard
