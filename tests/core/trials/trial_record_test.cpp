#include "core/trials/trial_record.h"

#include "core/domain/gave_out.h"
#include "tests/support/log_builder.h"
#include "tests/support/trial_kit.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::kTrialMonday;
using testing_support::LogBuilder;
using testing_support::madeTrial;

constexpr Id<Muscle> kBiceps{1};

// Two lines of one exercise; the arms of the trial are trained on them.
struct RecordCase {
    LogBuilder log;
    Trial trial = madeTrial({.blocks = 4});

    RecordCase() { startLine(0); }
    // The builder adds to its newest line, so exposures of an arm are given together.
    void startLine(std::size_t arm)
    {
        log.line(QStringLiteral("Arm curl"), arm == 0 ? QStringLiteral("supinated") : QStringLiteral("neutral"))
            .trains(kBiceps, QStringLiteral("biceps"), 1.0);
        const LiftLine& line = log.newestLine().line;
        trial.arms[arm].variant = line.variant;
        trial.arms[arm].grip = line.grip;
        trial.arms[arm].standard = line.standard;
    }
    void train(QDate date, int tension, int reps = 10)
    {
        log.exposure(date, {{.load = 40, .reps = reps, .off = 0, .rir = 1},
                            {.load = 40, .reps = reps, .off = 0, .rir = 1},
                            {.load = 40, .reps = reps, .off = 0, .rir = 1}});
        log.felt(tension, {}, {}, kTargetGaveOut.toString());
    }
    [[nodiscard]] std::vector<QDate> daysOf(std::size_t arm) const
    {
        std::vector<QDate> days;
        for (const TrialDay& day : trial.days)
            if (day.arm == arm) days.push_back(day.date);
        return days;
    }
    [[nodiscard]] TrialRecord record(int daysAfter = 10) const
    {
        return trialRecord(trial, log.build(), {}, trial.days.back().date.addDays(daysAfter));
    }
};

int count(const TrialRecord& record, TrialDeviation kind)
{
    return static_cast<int>(std::ranges::count(record.deviations, kind, &NotedDeviation::kind));
}

TEST(TrialRecord, FindsEveryDrawnSessionInTheLog)
{
    RecordCase made;
    for (const QDate day : made.daysOf(0)) made.train(day, 5);
    made.startLine(1);
    for (const QDate day : made.daysOf(1)) made.train(day, 8);
    const TrialRecord record = made.record();
    ASSERT_EQ(record.observations.size(), 8u);
    for (const TrialObservation& seen : record.observations) {
        EXPECT_EQ(seen.done, seen.drawn);
        EXPECT_EQ(seen.doneOn, seen.date);
        EXPECT_EQ(seen.value(u"tension"), seen.drawn == 0 ? 5 : 8);
        EXPECT_EQ(seen.value(u"target_first"), 1);
        EXPECT_EQ(seen.workingSets, 3);
    }
    EXPECT_TRUE(record.deviations.empty());
    EXPECT_TRUE(deviationSentences(record).empty());
}

TEST(TrialRecord, NotesAnotherArmALateAndAMissedSession)
{
    RecordCase made;
    auto first = made.daysOf(0);
    first.pop_back();                          // missed
    first.front() = first.front().addDays(1);  // late
    for (const QDate day : first) made.train(day, 5);
    made.train(made.daysOf(1).front(), 6);  // the wrong line
    std::ranges::sort(made.log.newestLine().exposures, {}, &Exposure::date);
    made.startLine(1);
    const auto second = made.daysOf(1);
    for (std::size_t i = 1; i < second.size(); ++i) made.train(second[i], 8);
    const TrialRecord record = made.record();
    EXPECT_EQ(count(record, TrialDeviation::OtherArm), 1);
    EXPECT_EQ(count(record, TrialDeviation::Late), 1);
    EXPECT_EQ(count(record, TrialDeviation::Missed), 1);
    EXPECT_EQ(record.deviations.size(), 3u);
    EXPECT_EQ(deviationSentences(record).size(), 3u);
}

TEST(TrialRecord, TheCoachsWordGoesBeforeTheLog)
{
    RecordCase made;
    for (const QDate day : made.daysOf(0)) made.train(day, 5);
    made.startLine(1);
    for (const QDate day : made.daysOf(1)) made.train(day, 8);
    made.trial.days[0].armDone = 1 - made.trial.days[0].arm;
    made.trial.days[1].missed = true;
    const TrialRecord record = made.record();
    EXPECT_EQ(record.observations[0].done, 1 - made.trial.days[0].arm);
    EXPECT_EQ(record.observations[1].done, std::nullopt);
    EXPECT_EQ(record.observations[1].doneOn, std::nullopt);
    EXPECT_EQ(count(record, TrialDeviation::Missed), 1);
    EXPECT_EQ(count(record, TrialDeviation::Unscheduled),
              1);  // the log still has what the coach says wasn't this trial's
}

TEST(TrialRecord, TellsArmsOnOneLineApartByTheirRepetitions)
{
    RecordCase made;
    made.trial.factor = TrialFactor::RepBand;
    made.trial.arms[1] = made.trial.arms[0];
    made.trial.arms[0].band = {5, 8};
    made.trial.arms[1].band = {12, 15};
    for (const TrialDay& day : made.trial.days) made.train(day.date, 6, day.arm == 0 ? 6 : 13);
    made.trial.days[2].arm = 1 - made.trial.days[2].arm;  // so that this one was done otherwise than drawn
    const TrialRecord record = made.record();
    for (const TrialObservation& seen : record.observations)
        EXPECT_EQ(seen.done == seen.drawn, seen.day != 2) << seen.day;
}

TEST(TrialRecord, TellsArmsOnOneLineApartByTheirLowering)
{
    RecordCase made;
    made.trial.factor = TrialFactor::Lowering;
    made.trial.arms[1] = made.trial.arms[0];
    made.trial.arms[0].loweringSeconds = Decimal(2);
    made.trial.arms[1].loweringSeconds = Decimal(5);
    for (const TrialDay& day : made.trial.days) {
        made.train(day.date, 6);
        for (LoggedSet& logged : made.log.newestExposure().sets)
            logged.set.loweringSeconds = Decimal(day.arm == 0 ? 2 : 5);
    }
    made.trial.days[3].arm = 1 - made.trial.days[3].arm;
    const TrialRecord record = made.record();
    for (const TrialObservation& seen : record.observations)
        EXPECT_EQ(seen.done == seen.drawn, seen.day != 3) << seen.day;
}

TEST(TrialRecord, NotesSessionsOutsideTheTrialAndOtherNumbersOfSets)
{
    RecordCase made;
    made.trial.sets = 4;
    for (const QDate day : made.daysOf(0)) made.train(day, 5);
    made.startLine(1);
    for (const QDate day : made.daysOf(1)) made.train(day, 8);
    const QDate between = made.trial.days[2].date.addDays(1);  // that day's own session is done
    made.train(between, 6);
    std::ranges::sort(made.log.newestLine().exposures, {}, &Exposure::date);
    const TrialRecord record = made.record();
    EXPECT_EQ(count(record, TrialDeviation::Unscheduled), 1);
    EXPECT_EQ(count(record, TrialDeviation::OtherSets), 8);
}

TEST(TrialRecord, LeavesSorenessOutWhenTheMuscleWasTrainedBeforeItWasRated)
{
    RecordCase made;
    const QDate day = made.trial.days.front().date;
    made.startLine(made.trial.days.front().arm);
    made.train(day, 5);
    made.log.soreAfter(6);
    made.log.line(QStringLiteral("Row")).trains(kBiceps, QStringLiteral("biceps"), 0.5);
    made.train(day.addDays(1), 5);
    const TrialRecord record = made.record();
    EXPECT_EQ(record.observations.front().value(u"next_soreness"), std::nullopt);
    EXPECT_EQ(count(record, TrialDeviation::Clouded), 1);
}

TEST(TrialRecord, KeepsSorenessWhenOnlyOtherMusclesWereTrained)
{
    RecordCase made;
    const QDate day = made.trial.days.front().date;
    made.startLine(made.trial.days.front().arm);
    made.train(day, 5);
    made.log.soreAfter(6);
    made.log.line(QStringLiteral("Squat")).trains(Id<Muscle>(2), QStringLiteral("quadriceps"), 1.0);
    made.train(day.addDays(1), 5);
    const TrialRecord record = made.record();
    EXPECT_EQ(record.observations.front().value(u"next_soreness"), 6);
    EXPECT_EQ(count(record, TrialDeviation::Clouded), 0);
}

TEST(TrialRecord, OfAnEndedTrialStopsAtItsEnd)
{
    RecordCase made;
    made.trial.ending = TrialEnding{made.trial.days[3].date, TrialEnd::Stopped, QStringLiteral("travel")};
    const TrialRecord record = made.record();
    EXPECT_EQ(record.observations.size(), 4u);
    EXPECT_EQ(record.asOf, made.trial.days[3].date);
    EXPECT_EQ(count(record, TrialDeviation::Stopped), 1);
}

TEST(TrialRecord, ASessionThatIsDueTodayIsNotMissedYet)
{
    RecordCase made;
    const TrialRecord record = trialRecord(made.trial, made.log.build(), {}, made.trial.days.front().date);
    ASSERT_EQ(record.observations.size(), 1u);
    EXPECT_FALSE(record.observations.front().done);
    EXPECT_TRUE(record.deviations.empty());
}

// A lifter who gets stronger at the pace that the forecast knows shows no performance beyond it, in either arm.
TEST(TrialRecord, PerformanceIsBeyondTheLinesOwnForecastAndNotTheGrowth)
{
    RecordCase made;
    made.trial.blocks = 8;
    made.trial.days = drawDays(made.trial, {.from = kTrialMonday, .weekdays = {1, 4}}).value();
    for (const std::size_t arm : {0u, 1u}) {
        if (arm == 1) made.startLine(1);
        // Half a year before, and the trial: a repetition more every three weeks.
        int done = 0;
        for (int week = 26; week > 0; --week, ++done) made.train(kTrialMonday.addDays(-7 * week), 6, 8 + done / 3);
        for (const QDate day : made.daysOf(arm))
            made.train(day, 6, 8 + static_cast<int>(26 + kTrialMonday.daysTo(day) / 7) / 3);
    }
    const QDate asOf = made.trial.days.back().date.addDays(1);
    const auto surprises = trialSurprises(made.trial, made.log.build(), ReadingParameters{}, VerdictThresholds{}, asOf);
    ASSERT_EQ(surprises.size(), 2u);
    const TrialRecord record = trialRecord(made.trial, made.log.build(), surprises, asOf);
    double sum = 0;
    for (const TrialObservation& seen : record.observations) {
        const auto extra = seen.value(u"performance");
        ASSERT_TRUE(extra) << seen.day;
        EXPECT_LT(std::abs(*extra), 2.5);
        sum += *extra;
    }
    EXPECT_LT(std::abs(sum / static_cast<double>(record.observations.size())), 0.6);
}

}  // namespace
}  // namespace steelyard
