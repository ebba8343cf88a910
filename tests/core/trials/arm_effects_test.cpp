#include "core/trials/arm_effects.h"

#include "tests/support/trial_kit.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

using testing_support::madeRecord;
using testing_support::madeTrial;
using testing_support::tension;

TEST(ArmEffects, FindsTheDifferenceThatWasPutIn)
{
    const Trial trial = madeTrial({.blocks = 10});
    const auto record = madeRecord(trial, [](const TrialDay& day, std::size_t i) {
        return tension((day.arm == 1 ? 7.0 : 5.0) + (i % 3 == 0 ? 0.5 : -0.25));
    });
    const TrialEffects effects = trialEffects(trial, record, ArmTaken::Done);
    ASSERT_TRUE(effects.answer);
    const EstimatedDifference* one = effects.answer->difference(1, 0);
    ASSERT_NE(one, nullptr);
    EXPECT_NEAR(one->mean, 2, 0.4);
    EXPECT_LT(one->low90, 2);
    EXPECT_GT(one->low90, 0);
    EXPECT_GT(one->chanceBetter, 0.99);
    EXPECT_GT(effects.answer->chanceBest[1], 0.99);
    ASSERT_NE(effects.outcome(u"tension"), nullptr);
    EXPECT_NEAR(effects.outcome(u"tension")->arms[0].mean.value(), 5, 0.3);
}

TEST(ArmEffects, LessDiscomfortIsBetterAndStaysInItsOwnUnit)
{
    Trial trial = madeTrial({.blocks = 8});
    trial.outcomes = {{QStringLiteral("discomfort"), 1}};
    const auto record = madeRecord(trial, [](const TrialDay& day, std::size_t i) {
        return std::vector<OutcomeValue>{
            {QStringLiteral("discomfort"), (day.arm == 1 ? 4.0 : 1.0) + (i % 2 == 0 ? 0.2 : 0)}};
    });
    const TrialEffects effects = trialEffects(trial, record, ArmTaken::Done);
    const OutcomeEffects* discomfort = effects.outcome(u"discomfort");
    ASSERT_NE(discomfort, nullptr);
    EXPECT_GT(discomfort->difference(1, 0)->mean, 2);
    EXPECT_LE(discomfort->difference(1, 0)->low90, discomfort->difference(1, 0)->mean);
    EXPECT_GE(discomfort->difference(1, 0)->high90, discomfort->difference(1, 0)->mean);
    EXPECT_LT(discomfort->difference(1, 0)->chanceBetter, 0.05);
    EXPECT_GT(discomfort->chanceBest[0], 0.95);
    EXPECT_NEAR(discomfort->arms[1].level.value(), 4, 0.6);
    EXPECT_LT(effects.answer->difference(1, 0)->mean, 0);  // of the answer more is always better
}

TEST(ArmEffects, WeighsOutcomesOnOneScale)
{
    Trial trial = madeTrial({.blocks = 4});
    trial.outcomes = {{QStringLiteral("tension"), 3}, {QStringLiteral("target_first"), 1}};
    const auto record = madeRecord(trial, [](const TrialDay&, std::size_t) {
        return std::vector<OutcomeValue>{{QStringLiteral("tension"), 6}, {QStringLiteral("target_first"), 1}};
    });
    for (const auto& answer : sessionAnswers(trial, record)) EXPECT_NEAR(answer.value(), (3 * 6 + 10) / 4.0, 1e-12);
}

TEST(ArmEffects, LeavesOutWhatIsSeldomRatedAndSessionsThatLackTheRest)
{
    Trial trial = madeTrial({.blocks = 6});
    trial.outcomes = {{QStringLiteral("tension"), 1}, {QStringLiteral("pump"), 1}};
    const auto record = madeRecord(trial, [](const TrialDay& day, std::size_t i) {
        std::vector<OutcomeValue> values;
        if (i != 3) values.push_back({QStringLiteral("tension"), day.arm == 1 ? 7.0 : 6.0});
        if (i < 3) values.push_back({QStringLiteral("pump"), 5});
        return values;
    });
    const TrialEffects effects = trialEffects(trial, record, ArmTaken::Done);
    EXPECT_EQ(effects.leftOut, std::vector<QString>{QStringLiteral("pump")});
    EXPECT_EQ(effects.sessionsWithoutAnswer, 1);
    ASSERT_TRUE(effects.answer);
    EXPECT_EQ(effects.answer->arms[0].sessions + effects.answer->arms[1].sessions, 11);
}

TEST(ArmEffects, CountsByWhatWasDoneOrByWhatWasDrawn)
{
    const Trial trial = madeTrial({.blocks = 8});
    auto record = madeRecord(trial, [](const TrialDay&, std::size_t) { return tension(6); });
    for (std::size_t i = 0; i < record.observations.size(); ++i) {
        TrialObservation& seen = record.observations[i];
        if (i >= 8) seen.done = 1 - seen.drawn;  // changed over half-way
        seen.values = tension(*seen.done == 1 ? 8 : 5);
    }
    const TrialEffects done = trialEffects(trial, record, ArmTaken::Done);
    const TrialEffects drawn = trialEffects(trial, record, ArmTaken::Drawn);
    EXPECT_GT(done.answer->difference(1, 0)->mean, 2);
    EXPECT_LT(std::abs(drawn.answer->difference(1, 0)->mean), 1);
    EXPECT_FALSE(done.answer->byLot);
    ASSERT_TRUE(drawn.answer->byLot);
    EXPECT_GT(drawn.answer->byLot->p, 0.1);
}

TEST(ArmEffects, SessionsToGetUsedToItDoNotCount)
{
    const Trial trial = madeTrial({.blocks = 4, .runIn = 3});
    const auto record =
        madeRecord(trial, [](const TrialDay& day, std::size_t) { return tension(day.block == 0 ? 0 : 6); });
    const TrialEffects effects = trialEffects(trial, record, ArmTaken::Done);
    EXPECT_EQ(effects.answer->arms[0].sessions, 4);
    EXPECT_EQ(effects.answer->arms[0].mean, 6);
    EXPECT_EQ(trialEffects(trial, record, ArmTaken::Done, 2).answer->arms[0].sessions, 2);
}

TEST(ArmEffects, OfOneArmAloneSaysNothingAndHasNoNaN)
{
    const Trial trial = madeTrial({.blocks = 4});
    auto record = madeRecord(trial, [](const TrialDay& day, std::size_t) {
        return day.arm == 0 ? tension(6) : std::vector<OutcomeValue>{};
    });
    const TrialEffects effects = trialEffects(trial, record, ArmTaken::Drawn);
    EXPECT_FALSE(effects.answer);
    const OutcomeEffects* one = effects.outcome(u"tension");
    ASSERT_NE(one, nullptr);
    EXPECT_TRUE(one->differences.empty());
    EXPECT_TRUE(one->chanceBest.empty());
    EXPECT_FALSE(one->arms[1].level);
    EXPECT_TRUE(std::isfinite(one->arms[0].level.value()));
}

TEST(ArmEffects, TargetFirstIsComparedAsShares)
{
    Trial trial = madeTrial({.blocks = 8});
    trial.outcomes = {{QStringLiteral("target_first"), 1}};
    std::array<int, 2> seen{};
    const auto record = madeRecord(trial, [&](const TrialDay& day, std::size_t) {
        const int place = seen[day.arm]++;
        return std::vector<OutcomeValue>{{QStringLiteral("target_first"), place < (day.arm == 1 ? 6 : 3) ? 1.0 : 0.0}};
    });
    const OutcomeEffects effects = *trialEffects(trial, record, ArmTaken::Done).outcome(u"target_first");
    EXPECT_NEAR(effects.difference(1, 0)->chanceBetter, 0.923282599753188, 1e-9);  // SciPy, trial_regression.csv
    EXPECT_EQ(effects.arms[1].mean, 0.75);
    EXPECT_FALSE(effects.posterior);
}

}  // namespace
}  // namespace steelyard
