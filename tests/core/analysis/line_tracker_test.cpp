// What must hold whatever the numbers are.
#include "core/analysis/line_tracker.h"

#include "core/analysis/line_numbers.h"
#include "core/analysis/regime_engine.h"
#include "tests/support/positive_definite.h"
#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace steelyard {
namespace {

using testing_support::isPositiveDefinite;
using testing_support::LogBuilder;
using testing_support::MadeSet;
using testing_support::wobble;

const QDate kLastDay(2026, 6, 1);

// Three sets a session, slowly rising, with some of every kind of set.
MadeSet variedSet(int session, int number)
{
    MadeSet set{.load = 40 + 0.1 * session + wobble(session + number), .reps = 10 - number, .off = 0, .rir = 1};
    if (session % 7 == 3) set.rir.reset();
    if (session % 9 == 4) set.off = number == 2 ? 4 : 1;
    if (session % 5 == 2) set.rir = 6;
    if (session % 11 == 6) set.kind = SetKind::Deload;
    if (session % 6 == 1 && number == 2) set.failed = true;
    return set;
}

LogBuilder variedLine(int sessions, double scale = 1)
{
    LogBuilder builder = LogBuilder().line(QStringLiteral("Arm curl"));
    for (int i = 0; i < sessions; ++i) {
        std::vector<MadeSet> sets;
        for (int number = 0; number < 3; ++number) {
            sets.push_back(variedSet(i, number));
            sets.back().load *= scale;
        }
        builder.exposure(kLastDay.addDays(-4 * (sessions - 1 - i)), sets);
    }
    return builder;
}

const ReadingParameters kParameters;
const VerdictThresholds kThresholds;

LineTracker trackedTo(const AthleteLog& log, QDate until)
{
    LineTracker tracker(kParameters, kThresholds, log.athlete.value.experience);
    const LineRecord& record = log.lines.front();
    tracker.advance(record, countExposures(record, log.bodyMass, until), log, until);
    return tracker;
}

void expectSame(const RegimeChances& a, const RegimeChances& b)
{
    EXPECT_EQ(a.rising, b.rising);
    EXPECT_EQ(a.flat, b.flat);
    EXPECT_EQ(a.falling, b.falling);
}

TEST(LineTracker, SaysOfEveryPastWeekWhatItSaidThen)
{
    const AthleteLog all = variedLine(60).build();
    const LineTracker whole = trackedTo(all, kLastDay);
    ASSERT_GT(whole.weeks().size(), 30U);
    for (std::size_t i = 0; i < whole.weeks().size(); i += 5) {
        const QDate sunday = lastDayOfWeek(whole.weeks()[i].week);
        AthleteLog cut = all;
        std::erase_if(cut.lines.front().exposures, [&](const Exposure& e) { return e.date > sunday; });
        // Over midnight, so that the week is closed.
        const LineTracker then = trackedTo(cut, sunday.addDays(1));
        ASSERT_EQ(then.weeks().size(), i + 1);
        EXPECT_EQ(then.weeks().back().verdict, whole.weeks()[i].verdict);
        if (i >= 5) expectSame(then.weeks().back().chances, whole.weeks()[i].chances);
    }
}

TEST(LineTracker, GoesOnFromWhereItWasAsIfReadAtOnce)
{
    const AthleteLog log = variedLine(60).build();
    const LineRecord& record = log.lines.front();
    const auto counted = countExposures(record, log.bodyMass, kLastDay);
    LineTracker steps(kParameters, kThresholds, log.athlete.value.experience);
    for (int back = 240; back >= 0; --back) steps.advance(record, counted, log, kLastDay.addDays(-back));
    const LineTracker once = trackedTo(log, kLastDay);
    expectSame(*steps.chances(), *once.chances());
    EXPECT_EQ(steps.weeks().size(), once.weeks().size());
    EXPECT_EQ(capacityOf(steps, 0), capacityOf(once, 0));
}

TEST(LineTracker, ScalesCapacityWithTheLoadsAndNothingElse)
{
    const AthleteLog one = variedLine(40).build();
    const AthleteLog double_ = variedLine(40, 2).build();
    const LineTracker a = trackedTo(one, kLastDay);
    const LineTracker b = trackedTo(double_, kLastDay);
    // Loads have three decimals, so doubling is exact; their logarithms are rounded, to a float in the end.
    EXPECT_NEAR(std::log(capacityOf(b, 0).kg / capacityOf(a, 0).kg), std::log(2.0), 1e-5);
    EXPECT_NEAR(a.chances()->rising, b.chances()->rising, 1e-4);
    EXPECT_NEAR(rateOf(a).perWeek, rateOf(b).perWeek, 1e-6);
}

TEST(LineTracker, AFarLowerBoundChangesNothing)
{
    LogBuilder with = variedLine(30);
    with.exposure(kLastDay.addDays(1), {{.load = 40, .reps = 1, .off = 0, .rir = 6}});
    LogBuilder without = variedLine(30);
    const LineTracker a = trackedTo(with.build(), kLastDay.addDays(1));
    const LineTracker b = trackedTo(without.build(), kLastDay.addDays(1));
    EXPECT_NEAR(a.chances()->rising, b.chances()->rising, 2e-3);
    EXPECT_NEAR(std::log(capacityOf(a, 0).kg), std::log(capacityOf(b, 0).kg), 2e-3);
}

TEST(LineTracker, ATenfoldSlipMovesTheLevelByLessThanHalfItsError)
{
    LogBuilder slipped = LogBuilder().line(QStringLiteral("Arm curl"));
    LogBuilder right = slipped;
    const auto made = [](int i) { return MadeSet{.load = 40 + wobble(i), .reps = 10, .off = 0, .rir = 1}; };
    right.exposures(30, kLastDay, 4, made);
    slipped.exposures(30, kLastDay, 4, [&](int i) {
        MadeSet set = made(i);
        if (i == 29) set.load *= 10;
        return set;
    });
    const CapacityEstimate a = capacityOf(trackedTo(right.build(), kLastDay), 0);
    const CapacityEstimate b = capacityOf(trackedTo(slipped.build(), kLastDay), 0);
    const double sd = std::log(a.high90Kg / a.low90Kg) / (2 * 1.645);
    EXPECT_LT(std::abs(std::log(b.kg / a.kg)), 0.5 * sd);
}

TEST(LineTracker, MoreOfTheSameNarrowsTheBand)
{
    double before = 1e9;
    for (const int sessions : {3, 6, 12, 24, 48}) {
        const AthleteLog log =
            LogBuilder()
                .line(QStringLiteral("Arm curl"))
                .exposures(sessions, kLastDay, 4,
                           [](int i) { return MadeSet{.load = 40, .reps = 10 + i % 2, .off = 0, .rir = 1}; })
                .build();
        const CapacityEstimate estimate = capacityOf(trackedTo(log, kLastDay), 0);
        const double width = std::log(estimate.high90Kg / estimate.low90Kg);
        EXPECT_LT(width, before * 1.02) << sessions;
        before = width;
    }
}

// Whatever was typed: nothing is NaN, chances are chances, every covariance has a Cholesky root.
TEST(LineTracker, StaysSoundOnNonsense)
{
    std::mt19937 random(20260601);
    const auto whole = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(random); };
    for (int lifter = 0; lifter < 40; ++lifter) {
        LogBuilder builder = LogBuilder().line(QStringLiteral("Arm curl"));
        QDate day = kLastDay.addDays(-700);
        for (int i = 0; i < 60; ++i) {
            std::vector<MadeSet> sets;
            for (int number = whole(1, 12); number > 0; --number) {
                MadeSet set{.load = std::pow(10.0, whole(-2, 2)) * whole(0, 9), .reps = whole(0, 400)};
                if (whole(0, 2)) set.off = whole(0, set.reps);
                if (whole(0, 1)) set.rir = whole(0, 10);
                set.failed = whole(0, 9) == 0;
                set.kind = static_cast<SetKind>(whole(0, 3));
                sets.push_back(set);
            }
            builder.exposure(day, sets);
            day = day.addDays(whole(1, 25));
        }
        const AthleteLog log = builder.build();
        const LineTracker tracker = trackedTo(log, day);
        if (!tracker.started()) continue;
        for (const TrackedWeek& week : tracker.weeks()) {
            const RegimeChances& c = week.chances;
            ASSERT_TRUE(c.rising >= 0 && c.flat >= 0 && c.falling >= 0);
            ASSERT_NEAR(c.rising + c.flat + c.falling, 1, 1e-9);
        }
        for (const TrackedCase& one : tracker.cases())
            for (const RegimeHypothesis& h : one.filter.hypotheses()) ASSERT_TRUE(isPositiveDefinite(h));
        for (const LineReading& reading : RegimeEngine().readAll(log, day)) {
            EXPECT_TRUE(std::isfinite(reading.rate.value_or(TrendRate()).perWeek));
            EXPECT_TRUE(std::isfinite(reading.rate.value_or(TrendRate()).low90));
            EXPECT_TRUE(std::isfinite(reading.capacity.value_or(CapacityEstimate()).kg));
            EXPECT_TRUE(std::isfinite(reading.next.value_or(Forecast()).repsMedian));
        }
    }
}

}  // namespace
}  // namespace steelyard
