#include "core/trials/trial_standing.h"

#include "tests/support/trial_kit.h"

#include <gtest/gtest.h>

#include <numeric>

namespace steelyard {
namespace {

using testing_support::madeRecord;
using testing_support::madeTrial;
using testing_support::tension;

TrialRecord upTo(const Trial& trial, std::size_t sessions)
{
    TrialRecord record = madeRecord(trial, [](const TrialDay&, std::size_t) { return tension(6); });
    record.observations.resize(sessions);
    record.asOf = trial.days[sessions - 1].date;
    return record;
}

TEST(TrialStanding, CountsWhatIsDoneAndWhatIsToCome)
{
    const Trial trial = madeTrial({.blocks = 6, .runIn = 1});
    const TrialStanding standing = trialStanding(trial, upTo(trial, 8), trial.days[7].date);
    int done = 0;
    int toCome = 0;
    for (const ArmStanding& arm : standing.arms) {
        EXPECT_EQ(arm.gotUsed, 1);
        EXPECT_EQ(arm.done + arm.toCome, 6);
        done += arm.done;
        toCome += arm.toCome;
    }
    EXPECT_EQ(done, 6);
    EXPECT_EQ(toCome, standing.sessionsToCome);
    ASSERT_TRUE(standing.next);
    EXPECT_EQ(standing.next->date, trial.days[8].date);
    EXPECT_EQ(standing.wholeBlocks, 3);
    EXPECT_FALSE(standing.finished);
}

TEST(TrialStanding, ListsRatingsThatAreMissingAndWeigh)
{
    Trial trial = madeTrial();
    trial.outcomes = {{QStringLiteral("tension"), 1},
                      {QStringLiteral("pump"), 0.5},
                      {QStringLiteral("burn"), 0},
                      {QStringLiteral("performance"), 1}};
    const TrialStanding standing = trialStanding(trial, upTo(trial, 3), trial.days[2].date);
    ASSERT_EQ(standing.missing.size(), 3u);
    for (const MissingRating& one : standing.missing) EXPECT_EQ(one.key, u"pump");
}

TEST(TrialStanding, AMissedSessionIsNotToComeAndNotNext)
{
    const Trial trial = madeTrial();
    TrialRecord record = upTo(trial, 5);
    TrialObservation& missed = record.observations.back();
    missed.done.reset();
    missed.doneOn.reset();
    missed.missed = true;
    record.deviations = {{TrialDeviation::Missed, missed.date, missed.day, {}}};
    const TrialStanding standing = trialStanding(trial, record, missed.date);
    EXPECT_EQ(standing.arms[missed.drawn].missed, 1);
    EXPECT_EQ(standing.next->date, trial.days[5].date);
    EXPECT_EQ(standing.sessionsToCome, 7);
}

TEST(TrialStanding, IsFinishedAfterTheLastSessionOrWithAnEnding)
{
    Trial trial = madeTrial();
    const TrialRecord all = upTo(trial, trial.days.size());
    EXPECT_TRUE(trialStanding(trial, all, trial.days.back().date).finished);
    EXPECT_FALSE(trialStanding(trial, all, trial.days.back().date).next);
    trial.ending = TrialEnding{trial.days[3].date, TrialEnd::Stopped, QStringLiteral("moved away")};
    const TrialStanding ended = trialStanding(trial, upTo(trial, 4), trial.days[4].date);
    EXPECT_TRUE(ended.finished);
    EXPECT_FALSE(ended.next);
    EXPECT_EQ(ended.sessionsToCome, 0);
}

TEST(TrialStanding, AlwaysShowsDiscomfort)
{
    const Trial trial = madeTrial();
    TrialRecord record = upTo(trial, 8);
    for (TrialObservation& seen : record.observations) seen.discomfort[0] = seen.drawn == 0 ? 7 : 1;
    ASSERT_EQ(trialStanding(trial, record, record.asOf).out.size(), 1u);
}

}  // namespace
}  // namespace steelyard
