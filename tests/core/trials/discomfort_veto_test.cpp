#include "core/trials/discomfort_veto.h"

#include "core/trials/trial_random.h"
#include "tests/support/trial_kit.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

using testing_support::madeRecord;
using testing_support::madeTrial;
using testing_support::MadeTrialShape;

void rate(TrialObservation& seen, std::optional<int> rating, Joint joint = Joint::Wrist)
{
    seen.discomfort[static_cast<std::size_t>(joint)] = rating;
}

TrialRecord unrated(const Trial& trial)
{
    return madeRecord(trial, [](const TrialDay&, std::size_t) { return std::vector<OutcomeValue>{}; });
}

std::vector<TrialObservation*> sessionsOf(TrialRecord& record, std::size_t arm)
{
    std::vector<TrialObservation*> sessions;
    for (TrialObservation& seen : record.observations)
        if (seen.done == arm) sessions.push_back(&seen);
    return sessions;
}

TEST(DiscomfortVeto, TwoSessionsRunningAtTheLimitPutAnArmOut)
{
    const Trial trial = madeTrial();
    TrialRecord record = unrated(trial);
    const auto sessions = sessionsOf(record, 1);
    rate(*sessions[1], 4);
    rate(*sessions[2], 5, Joint::Elbow);
    const auto out = vetoedArms(trial, record);
    ASSERT_EQ(out.size(), 1u);
    EXPECT_EQ(out[0].arm, 1u);
    EXPECT_TRUE(out[0].sessionsRunning);
    EXPECT_EQ(out[0].rating, 5);
    EXPECT_EQ(out[0].joint, Joint::Elbow);
    EXPECT_EQ(out[0].since, sessions[2]->date);
}

TEST(DiscomfortVeto, ASessionBelowTheLimitBreaksTheRunAndOneWithoutARatingDoesNot)
{
    const Trial trial = madeTrial();
    TrialRecord broken = unrated(trial);
    auto sessions = sessionsOf(broken, 1);
    rate(*sessions[0], 5);
    rate(*sessions[1], 3);
    rate(*sessions[2], 5);
    EXPECT_TRUE(vetoedArms(trial, broken).empty());
    TrialRecord open = unrated(trial);
    sessions = sessionsOf(open, 1);
    rate(*sessions[0], 5);
    rate(*sessions[2], 5);
    EXPECT_EQ(vetoedArms(trial, open).size(), 1u);
}

TEST(DiscomfortVeto, HoldsWhileGettingUsedToAnArmToo)
{
    const Trial trial = madeTrial({.blocks = 4, .runIn = 2});
    TrialRecord record = unrated(trial);
    const auto sessions = sessionsOf(record, 0);
    ASSERT_EQ(sessions[1]->block, 0);
    rate(*sessions[0], 6);
    rate(*sessions[1], 6);
    EXPECT_EQ(vetoedArms(trial, record).size(), 1u);
}

TEST(DiscomfortVeto, AnArmThatPlainlyHurtsMoreIsOutBelowTheLimit)
{
    const Trial trial = madeTrial({.blocks = 8});
    TrialRecord record = unrated(trial);
    for (TrialObservation& seen : record.observations) rate(seen, seen.done == 1u ? 3 : 0);
    const auto out = vetoedArms(trial, record);
    ASSERT_EQ(out.size(), 1u);
    EXPECT_EQ(out[0].arm, 1u);
    EXPECT_FALSE(out[0].sessionsRunning);
    EXPECT_GT(out[0].chanceWorse, 0.8);
}

TEST(DiscomfortVeto, TheLimitIsTheTrialsOwn)
{
    Trial trial = madeTrial();
    trial.limit = {.rating = 7, .sessionsRunning = 3};
    TrialRecord record = unrated(trial);
    const auto sessions = sessionsOf(record, 1);
    for (int i = 0; i < 2; ++i) rate(*sessions[static_cast<std::size_t>(i)], 8);
    EXPECT_TRUE(vetoedArms(trial, record).empty());
    rate(*sessions[2], 7);
    EXPECT_EQ(vetoedArms(trial, record).size(), 1u);
}

// The first block after which an arm of this shift is out, of ratings 1 + shift +- 1; 0: never.
int blockOfVeto(double shift, std::uint64_t seed)
{
    TrialRandom random(seed + 1'000'000);  // other numbers than the draw's
    const Trial trial = madeTrial({.blocks = 8, .seed = seed});
    TrialRecord whole = unrated(trial);
    for (TrialObservation& seen : whole.observations)
        rate(seen,
             static_cast<int>(std::clamp(std::round(1 + (seen.drawn == 1 ? shift : 0) + random.normal()), 0.0, 10.0)));
    for (int block = 2; block <= 8; ++block) {
        TrialRecord record = whole;
        std::erase_if(record.observations, [&](const TrialObservation& seen) { return seen.block > block; });
        if (!vetoedArms(trial, record).empty()) return block;
    }
    return 0;
}

// A simulation in NumPy of the same rule: out by block 4 and 8 for a shift of 0: 0 and 0; 1: .04 and .12; 2: .42 and .78;
// 3: .91 and 1.0. It looks for the run in the last two sessions of the arm only and knows which arm may hurt.
TEST(DiscomfortVeto, FiresAsOftenAsInTheSimulationElsewhere)
{
    constexpr int kTrials = 400;
    const std::array<std::array<double, 3>, 4> expected{
        {{0, 0, 0.01}, {1, 0.04, 0.12}, {2, 0.42, 0.78}, {3, 0.91, 1.0}}};
    for (const auto& [shift, byFour, byEight] : expected) {
        int four = 0;
        int eight = 0;
        for (int i = 0; i < kTrials; ++i) {
            const int block = blockOfVeto(shift, static_cast<std::uint64_t>(1000 + i));
            four += block > 0 && block <= 4 ? 1 : 0;
            eight += block > 0 ? 1 : 0;
        }
        EXPECT_NEAR(four / double{kTrials}, byFour, 0.09) << shift;
        EXPECT_NEAR(eight / double{kTrials}, byEight, 0.09) << shift;
    }
}

}  // namespace
}  // namespace steelyard
