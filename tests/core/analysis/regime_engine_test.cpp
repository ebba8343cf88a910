#include "core/analysis/regime_engine.h"

#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;
using testing_support::wobble;

const QDate kToday(2026, 6, 1);

LineReading readingOf(const LogBuilder& builder, QDate asOf = kToday)
{
    const AthleteLog& log = builder.build();
    return RegimeEngine().read(log.lines.front(), log, asOf);
}

LogBuilder curl()
{
    return LogBuilder().line(QStringLiteral("Arm curl"));
}

MadeSet steadySet(int i)
{
    return {.load = 40 + wobble(i), .reps = 10, .off = 0, .rir = 1};
}

MadeSet risingSet(int i)
{
    return {.load = 40 + 0.4 * i + wobble(i), .reps = 10, .off = 0, .rir = 1};
}

MadeSet fallingSet(int i)
{
    return {.load = 50 - 0.5 * i + wobble(i), .reps = 10, .off = 0, .rir = 1};
}

TEST(RegimeEngine, SaysProgressingOfASteadyRise)
{
    const auto reading = readingOf(curl().exposures(16, kToday, 4, risingSet));
    EXPECT_EQ(reading.verdict, Verdict::Progressing);
    EXPECT_EQ(reading.reason, QStringLiteral("rising"));
    ASSERT_TRUE(reading.rate);
    EXPECT_NEAR(reading.rate->perWeek, 0.4 * 7 / 4 / 43, 0.004);
    EXPECT_LT(reading.rate->low90, reading.rate->perWeek);
    EXPECT_GT(reading.rate->high90, reading.rate->perWeek);
    EXPECT_TRUE(reading.since);
}

TEST(RegimeEngine, SaysSlippingOfASteadyFall)
{
    const auto reading = readingOf(curl().exposures(16, kToday, 4, fallingSet));
    EXPECT_EQ(reading.verdict, Verdict::Slipping);
    EXPECT_LT(reading.rate.value().high90, 0.0);
}

TEST(RegimeEngine, SaysStalledOfALevelRecordOnceItWasClearForAWeek)
{
    // Eight weeks of record a week ago, so nine today.
    EXPECT_EQ(readingOf(curl().exposures(17, kToday, 4, steadySet)).verdict, Verdict::Stalled);  // 64 days
    EXPECT_EQ(readingOf(curl().exposures(16, kToday, 4, steadySet)).verdict, Verdict::Holding);  // 60 days
}

TEST(RegimeEngine, TheNumbersOfAStallAreThoseItRestsOn)
{
    const auto reading = readingOf(curl().exposures(40, kToday, 4, steadySet));
    ASSERT_EQ(reading.verdict, Verdict::Stalled);
    ASSERT_FALSE(reading.trend.empty());
    EXPECT_GE(reading.trend.front().date.daysTo(kToday), 7 * 11);
    EXPECT_LT(reading.rate.value().perWeek, VerdictThresholds::smallestWorthwhile(Experience::Intermediate));
    EXPECT_TRUE(reading.why.contains(QStringLiteral("over 21 session"))) << reading.why.toStdString();
}

TEST(RegimeEngine, DatesAStallByTheLastImprovement)
{
    const auto reading = readingOf(curl().exposures(40, kToday, 4, [](int i) {
        MadeSet set = steadySet(i);
        set.load = i < 12 ? 30 + i : 42 + wobble(i);
        return set;
    }));
    EXPECT_EQ(reading.verdict, Verdict::Stalled);
    ASSERT_TRUE(reading.since);
    EXPECT_LE(qAbs(reading.since->daysTo(kToday.addDays(-4 * 27))), 12);
}

TEST(RegimeEngine, CantTellFromAnEmptyLine)
{
    const auto reading = readingOf(curl());
    EXPECT_EQ(reading.verdict, Verdict::CantTell);
    EXPECT_EQ(reading.reason, QStringLiteral("too_few"));
    EXPECT_FALSE(reading.rate || reading.capacity || reading.next);
    EXPECT_TRUE(reading.trend.empty());
    EXPECT_FALSE(reading.why.isEmpty());
}

TEST(RegimeEngine, CantTellFromFewerThanFiveSessions)
{
    EXPECT_EQ(readingOf(curl().exposures(4, kToday, 10, steadySet)).reason, QStringLiteral("too_few"));
    EXPECT_NE(readingOf(curl().exposures(5, kToday, 10, steadySet)).reason, QStringLiteral("too_few"));
}

TEST(RegimeEngine, CantTellFromLessThanFourWeeks)
{
    EXPECT_EQ(readingOf(curl().exposures(10, kToday, 3, steadySet)).reason, QStringLiteral("too_few"));  // 27 days
    EXPECT_NE(readingOf(curl().exposures(8, kToday, 4, steadySet)).reason, QStringLiteral("too_few"));   // 28 days
}

TEST(RegimeEngine, CantTellFromARecordThatHasGoneQuiet)
{
    EXPECT_EQ(readingOf(curl().exposures(16, kToday.addDays(-25), 4, risingSet)).reason, QStringLiteral("too_few"));
}

TEST(RegimeEngine, CantTellFromAMixedRecordAndDrawsNothingThroughIt)
{
    const auto reading = readingOf(curl().exposures(16, kToday, 4, [](int i) {
        MadeSet set = risingSet(i);
        if (i >= 12) set.off = 4;
        return set;
    }));
    EXPECT_EQ(reading.verdict, Verdict::CantTell);
    EXPECT_EQ(reading.reason, QStringLiteral("mixed_record"));
    EXPECT_FALSE(reading.rate || reading.capacity);
    EXPECT_TRUE(reading.trend.empty());
    EXPECT_TRUE(reading.points.back().offStandard);
}

TEST(RegimeEngine, ReadsARecordWithAThirdOffStandard)
{
    const auto reading = readingOf(curl().exposures(
        16, kToday, 4, [](int i) { return MadeSet{.load = 40 + 0.4 * i, .reps = 12, .off = 4, .rir = 1}; }));
    EXPECT_EQ(reading.verdict, Verdict::Progressing);
    EXPECT_NEAR(reading.countedShare, 2.0 / 3.0, 1e-9);
}

TEST(RegimeEngine, TwoBadSessionsAreEnoughWhenTheyAreBad)
{
    const auto lastTwoOff = [](int off) {
        return [off](int i) {
            MadeSet set = steadySet(i);
            if (i >= 14) set.off = off;
            return set;
        };
    };
    EXPECT_NE(readingOf(curl().exposures(16, kToday, 4, lastTwoOff(5))).reason, QStringLiteral("mixed_record"));
    EXPECT_EQ(readingOf(curl().exposures(16, kToday, 4, lastTwoOff(6))).reason, QStringLiteral("mixed_record"));
}

TEST(RegimeEngine, NotBeingWatchedLowersTrustOnly)
{
    const auto reading = readingOf(curl().exposures(16, kToday, 4, [](int i) {
        MadeSet set = risingSet(i);
        set.off.reset();
        return set;
    }));
    EXPECT_EQ(reading.verdict, Verdict::Progressing);
    EXPECT_EQ(reading.watchedShare, 0.0);
    EXPECT_TRUE(reading.why.contains(QStringLiteral("watched")));
}

TEST(RegimeEngine, WithoutEffortOnlyAPlainRiseIsSaid)
{
    const auto without = [](MadeSet (*make)(int)) {
        return [make](int i) {
            MadeSet set = make(i);
            set.rir.reset();
            return set;
        };
    };
    const auto up = readingOf(curl().exposures(16, kToday, 4, without(risingSet)));
    EXPECT_EQ(up.verdict, Verdict::Progressing);
    EXPECT_FALSE(up.capacity || up.next);
    for (const auto make : {steadySet, fallingSet}) {
        const auto reading = readingOf(curl().exposures(16, kToday, 4, without(make)));
        EXPECT_EQ(reading.verdict, Verdict::CantTell);
        EXPECT_EQ(reading.reason, QStringLiteral("effort_unknown"));
    }
}

TEST(RegimeEngine, ReadsSetsThatEndedInFailureWithoutReportedEffort)
{
    const auto reading = readingOf(curl().exposures(16, kToday, 4, [](int i) {
        MadeSet set = fallingSet(i);
        set.rir.reset();
        set.failed = true;
        return set;
    }));
    EXPECT_EQ(reading.verdict, Verdict::Slipping);
}

TEST(RegimeEngine, HoldsForThreeWeeksAfterABreak)
{
    LogBuilder builder = curl();
    builder.exposures(12, kToday.addDays(-70), 4, risingSet);
    builder.exposures(10, kToday, 4,
                      [](int i) { return MadeSet{.load = 36 + 0.8 * i, .reps = 10, .off = 0, .rir = 1}; });
    const QDate back = kToday.addDays(-36);
    EXPECT_EQ(readingOf(builder, back.addDays(20)).reason, QStringLiteral("after_layoff"));
    EXPECT_EQ(readingOf(builder, back.addDays(20)).verdict, Verdict::Holding);
    EXPECT_EQ(readingOf(builder, back.addDays(21)).verdict, Verdict::Progressing);
}

TEST(RegimeEngine, ADropOverABreakIsNoSlip)
{
    LogBuilder builder = curl();
    builder.exposures(12, kToday.addDays(-50), 4, steadySet);
    builder.exposures(7, kToday, 4,
                      [](int i) { return MadeSet{.load = 36 + wobble(i), .reps = 10, .off = 0, .rir = 1}; });
    EXPECT_EQ(readingOf(builder).verdict, Verdict::Holding);
}

TEST(RegimeEngine, HoldsInADeloadWeekLoggedOrPlanned)
{
    LogBuilder logged = curl();
    logged.exposures(20, kToday.addDays(-4), 4, steadySet);
    ASSERT_EQ(readingOf(logged).verdict, Verdict::Stalled);
    LogBuilder planned = logged;
    planned.block(kToday.addDays(-9), {PlannedWeek{}, PlannedWeek{WeekKind::Deload, {}}});
    EXPECT_EQ(readingOf(planned).reason, QStringLiteral("deload"));
    logged.exposure(kToday, {{.load = 28, .reps = 8, .off = 0, .rir = 4, .kind = SetKind::Deload}});
    EXPECT_EQ(readingOf(logged).reason, QStringLiteral("deload"));
    EXPECT_EQ(readingOf(logged).verdict, Verdict::Holding);
}

TEST(RegimeEngine, CapacityAndForecastFollowTheEquationOnARecordWithoutNoise)
{
    const auto reading = readingOf(
        curl().exposures(12, kToday, 4, [](int) { return MadeSet{.load = 40, .reps = 10, .off = 0, .rir = 2}; }));
    ASSERT_TRUE(reading.capacity && reading.next);
    EXPECT_NEAR(reading.capacity->kg, 56.0, 1e-6);
    EXPECT_LT(reading.capacity->low90Kg, 56.0);
    EXPECT_GT(reading.capacity->high90Kg, 56.0);
    EXPECT_EQ(reading.next->repsInReserve, 2);
    EXPECT_DOUBLE_EQ(reading.next->load.kilograms(), 40.0);
    EXPECT_NEAR(reading.next->repsMedian, 10.0, 1e-6);
    EXPECT_GT(reading.next->repsHigh80 - reading.next->repsLow80, 1.0);
    EXPECT_LT(reading.next->repsHigh80 - reading.next->repsLow80, 6.0);
}

TEST(RegimeEngine, GivesACapacityBeforeItCanGiveATrend)
{
    const auto reading = readingOf(curl().exposure(kToday, {{.load = 40, .reps = 9, .off = 0, .rir = 1}}));
    EXPECT_EQ(reading.reason, QStringLiteral("too_few"));
    EXPECT_NEAR(reading.capacity.value().kg, 40 * (1 + 10.0 / 30), 1e-6);
    EXPECT_FALSE(reading.rate);
}

TEST(RegimeEngine, SaysWhenNoSetCanBeTurnedIntoAnEstimate)
{
    const auto reading = readingOf(
        curl().exposures(12, kToday, 4, [](int) { return MadeSet{.load = 40, .reps = 8, .off = 0, .rir = 6}; }));
    EXPECT_EQ(reading.verdict, Verdict::CantTell);
    EXPECT_EQ(reading.reason, QStringLiteral("no_estimate"));
}

TEST(RegimeEngine, ATypoDoesNotTurnTheVerdict)
{
    const auto reading = readingOf(curl().exposures(16, kToday, 4, [](int i) {
        MadeSet set = risingSet(i);
        if (i == 10) set.load *= 10;
        return set;
    }));
    EXPECT_EQ(reading.verdict, Verdict::Progressing);
    EXPECT_LT(reading.capacity.value().kg, 80.0);
}

}  // namespace
}  // namespace steelyard
