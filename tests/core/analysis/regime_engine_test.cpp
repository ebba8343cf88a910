#include "core/analysis/regime_engine.h"

#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

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

// Nothing in the record says that load costs repetitions: the opposite.
TEST(RegimeEngine, SaysNoKilogramsWhereHeavierSetsAlwaysCameWithMoreRepetitions)
{
    const AthleteLog log =
        curl()
            .exposures(
                200, kToday, 3,
                [](int i) { return MadeSet{.load = 40 + 2.5 * (i % 3), .reps = 8 + 4 * (i % 3), .off = 0, .rir = 2}; })
            .build();
    const LineReading reading = RegimeEngine({}, {}, {}, ReadingDepth::Course).read(log.lines.front(), log, kToday);
    for (const TrendPoint& point : reading.trend) {
        EXPECT_TRUE(std::isfinite(point.kg) && std::isfinite(point.low90Kg) && std::isfinite(point.high90Kg));
        EXPECT_LT(point.high90Kg, 2001);
    }
    for (const ReadingPoint& point : reading.points)
        EXPECT_TRUE(!point.capacityKg || (*point.capacityKg > 0 && *point.capacityKg < 2001));
    EXPECT_TRUE(!reading.capacity || reading.capacity->high90Kg < 2001);
}

TEST(RegimeEngine, SaysProgressingOfASteadyRise)
{
    const auto reading = readingOf(curl().exposures(16, kToday, 4, risingSet));
    EXPECT_EQ(reading.verdict, Verdict::Progressing);
    EXPECT_EQ(reading.reason, QStringLiteral("rising"));
    ASSERT_TRUE(reading.rate);
    // Two months are pulled towards the pace that is usual at this experience.
    EXPECT_LT(reading.rate->perWeek, 0.4 * 7 / 4 / 43);
    EXPECT_GT(reading.rate->perWeek, 0.006);
    EXPECT_LT(reading.rate->low90, reading.rate->perWeek);
    EXPECT_GT(reading.rate->high90, reading.rate->perWeek);
    EXPECT_TRUE(reading.since);
}

TEST(RegimeEngine, SaysSlippingOfASteadyFall)
{
    const auto reading = readingOf(curl().exposures(16, kToday, 4, fallingSet));
    EXPECT_EQ(reading.verdict, Verdict::Slipping);
    EXPECT_LT(reading.rate.value().perWeek, 0.0);
    EXPECT_GT(reading.rate->pFalling, reading.rate->pRising);
}

TEST(RegimeEngine, SaysStalledOnceARiseHasStopped)
{
    const auto turning = [](int i) {
        MadeSet set = steadySet(i);
        set.load += 0.35 * std::min(i, 20);
        return set;
    };
    // The last rise was 80 days before the end.
    EXPECT_EQ(readingOf(curl().exposures(40, kToday, 4, turning), kToday.addDays(-80)).verdict, Verdict::Progressing);
    const auto reading = readingOf(curl().exposures(40, kToday, 4, turning));
    EXPECT_EQ(reading.verdict, Verdict::Stalled);
    EXPECT_EQ(reading.reason, QStringLiteral("no_rise"));
    EXPECT_LT(reading.rate.value().perWeek, VerdictThresholds::smallestWorthwhile(Experience::Intermediate));
    ASSERT_TRUE(reading.since && reading.sinceLatest);
    EXPECT_LE(qAbs(reading.since->daysTo(kToday.addDays(-76))), 28);
    EXPECT_LE(*reading.since, *reading.sinceLatest);
}

TEST(RegimeEngine, SaysHowLongItWouldTakeWhenAStopDoesNotShowWithinABlock)
{
    LogBuilder slow = curl();
    slow.experience(Experience::Advanced).exposures(60, kToday, 4, steadySet);
    int holding = 0;
    for (int back = 0; back < 200; back += 7) {
        const auto reading = readingOf(slow, kToday.addDays(-back));
        ASSERT_TRUE(reading.weeksToTell);
        EXPECT_GT(*reading.weeksToTell, 8);
        if (reading.verdict != Verdict::Holding) continue;
        ++holding;
        EXPECT_EQ(reading.reason, QStringLiteral("slow_pace"));
        EXPECT_TRUE(reading.why.contains(QStringLiteral("longer than a block"))) << reading.why.toStdString();
    }
    EXPECT_GT(holding, 0);
}

TEST(RegimeEngine, ShowsTheStraightLineBesideTheReading)
{
    const auto reading = readingOf(curl().exposures(16, kToday, 4, risingSet));
    ASSERT_TRUE(reading.plain);
    EXPECT_EQ(reading.plainSessions, 14);
    EXPECT_NEAR(reading.plain->perWeek, 0.4 * 7 / 4 / 43, 0.004);
    EXPECT_TRUE(reading.why.contains(QStringLiteral("straight line"))) << reading.why.toStdString();
}

TEST(RegimeEngine, ALifterOfUnknownExperienceIsReadByTheirOwnPace)
{
    LogBuilder fast = curl();
    fast.experience(std::nullopt).exposures(30, kToday, 4, [](int i) {
        MadeSet set = steadySet(i);
        set.load = 40 * std::pow(1.008, i) + wobble(i);
        return set;
    });
    const auto reading = readingOf(fast);
    EXPECT_EQ(reading.verdict, Verdict::Progressing);
    EXPECT_NEAR(reading.rate.value().perWeek, 0.014, 0.003);
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

TEST(RegimeEngine, ReadsARecordWithAQuarterOffStandard)
{
    const auto reading = readingOf(curl().exposures(
        16, kToday, 4, [](int i) { return MadeSet{.load = 40 + 0.4 * i, .reps = 12, .off = 3, .rir = 1}; }));
    EXPECT_EQ(reading.verdict, Verdict::Progressing);
    EXPECT_NEAR(reading.countedShare, 0.75, 1e-9);
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
    EXPECT_NE(readingOf(curl().exposures(16, kToday, 4, lastTwoOff(2))).reason, QStringLiteral("mixed_record"));
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
    EXPECT_NE(readingOf(builder, back.addDays(21)).reason, QStringLiteral("after_layoff"));
}

TEST(RegimeEngine, ADropOverABreakIsNoSlip)
{
    LogBuilder builder = curl();
    builder.exposures(12, kToday.addDays(-50), 4, steadySet);
    builder.exposures(7, kToday, 4,
                      [](int i) { return MadeSet{.load = 36 + wobble(i), .reps = 10, .off = 0, .rir = 1}; });
    EXPECT_NE(readingOf(builder).verdict, Verdict::Slipping);
}

TEST(RegimeEngine, KeepsTheWordThroughADeloadWeekLoggedOrPlanned)
{
    LogBuilder logged = curl();
    logged.exposures(20, kToday.addDays(-4), 4, risingSet);
    ASSERT_EQ(readingOf(logged).verdict, Verdict::Progressing);
    LogBuilder planned = logged;
    planned.block(kToday.addDays(-9), {PlannedWeek{}, PlannedWeek{WeekKind::Deload, {}}});
    EXPECT_EQ(readingOf(planned).reason, QStringLiteral("deload"));
    EXPECT_EQ(readingOf(planned).verdict, Verdict::Progressing);
    logged.exposure(kToday, {{.load = 28, .reps = 8, .off = 0, .rir = 4, .kind = SetKind::Deload}});
    EXPECT_EQ(readingOf(logged).reason, QStringLiteral("deload"));
    EXPECT_EQ(readingOf(logged).verdict, Verdict::Progressing);
    EXPECT_TRUE(readingOf(logged).why.contains(QStringLiteral("easier week")));
}

TEST(RegimeEngine, HoldsInADeloadWeekThatComesBeforeAnyWord)
{
    LogBuilder early = curl();
    early.exposures(7, kToday.addDays(-4), 4, risingSet);
    early.exposure(kToday, {{.load = 28, .reps = 8, .off = 0, .rir = 4, .kind = SetKind::Deload}});
    EXPECT_EQ(readingOf(early).reason, QStringLiteral("deload"));
    EXPECT_EQ(readingOf(early).verdict, Verdict::Holding);
}

TEST(RegimeEngine, ExpectsWhatASteadyLifterDid)
{
    const auto reading = readingOf(
        curl().exposures(24, kToday, 4, [](int) { return MadeSet{.load = 40, .reps = 10, .off = 0, .rir = 2}; }));
    ASSERT_TRUE(reading.capacity && reading.next);
    // 10 repetitions and 2 in reserve are 12.65 to failure; a single one is (1 + 12.65/30) / (1 + 1/30) of z away, at 1.18
    // of z for a unit of ln load: 40 kg x (1.4217 / 1.0333)^(1 / 1.18).
    EXPECT_NEAR(reading.capacity->kg, 40 * std::pow(1.42167 / 1.03333, 1 / 1.18), 1.0);
    EXPECT_LT(reading.capacity->low90Kg, reading.capacity->kg);
    EXPECT_GT(reading.capacity->high90Kg, reading.capacity->kg);
    EXPECT_EQ(reading.next->repsInReserve, 2);
    EXPECT_DOUBLE_EQ(reading.next->load.kilograms(), 40.0);
    EXPECT_NEAR(reading.next->repsMedian, 10.0, 0.5);
    EXPECT_GT(reading.next->repsHigh80 - reading.next->repsLow80, 1.0);
    EXPECT_LT(reading.next->repsHigh80 - reading.next->repsLow80, 6.0);
}

TEST(RegimeEngine, GivesACapacityBeforeItCanGiveATrend)
{
    const auto reading = readingOf(curl().exposure(kToday, {{.load = 40, .reps = 9, .off = 0, .rir = 1}}));
    EXPECT_EQ(reading.reason, QStringLiteral("too_few"));
    EXPECT_NEAR(reading.capacity.value().kg, 40 * std::pow((1 + 10.55 / 30) / (1 + 1.0 / 30), 1 / 1.18), 0.5);
    EXPECT_FALSE(reading.rate);
}

TEST(RegimeEngine, SaysWhenNoSetSaysAnything)
{
    const auto reading = readingOf(
        curl().exposures(12, kToday, 4, [](int) { return MadeSet{.load = 0, .reps = 8, .off = 0, .rir = 1}; }));
    EXPECT_EQ(reading.verdict, Verdict::CantTell);
    EXPECT_EQ(reading.reason, QStringLiteral("no_estimate"));
}

TEST(RegimeEngine, PoundsAndKilogramsGiveTheSameWord)
{
    LogBuilder kilograms = curl();
    kilograms.exposures(30, kToday, 4, risingSet);
    AthleteLog pounds = kilograms.build();
    for (Exposure& exposure : pounds.lines.front().exposures)
        for (LoggedSet& logged : exposure.sets)
            logged.set.load =
                Load::make(Decimal::nearest(logged.set.load.kilograms() / 0.45359237, 3), MassUnit::lb).value();
    const LineReading a = readingOf(kilograms);
    const LineReading b = RegimeEngine().read(pounds.lines.front(), pounds, kToday);
    EXPECT_EQ(a.verdict, b.verdict);
    EXPECT_NEAR(a.rate.value().perWeek, b.rate.value().perWeek, 1e-5);
    EXPECT_NEAR(a.capacity.value().kg, b.capacity.value().kg, 2e-3);
}

TEST(RegimeEngine, LinesOfOneLifterDoNotChangeWithTheirOrder)
{
    AthleteLog log = curl()
                         .exposures(30, kToday, 4, risingSet)
                         .line(QStringLiteral("Row"))
                         .exposures(20, kToday, 5, steadySet)
                         .line(QStringLiteral("Press"))
                         .exposures(14, kToday, 6, fallingSet)
                         .experience(std::nullopt)
                         .build();
    const auto forwards = RegimeEngine().readAll(log, kToday);
    std::ranges::reverse(log.lines);
    const auto backwards = RegimeEngine().readAll(log, kToday);
    for (std::size_t i = 0; i < forwards.size(); ++i) {
        const LineReading& other = backwards[forwards.size() - 1 - i];
        EXPECT_EQ(forwards[i].verdict, other.verdict);
        EXPECT_NEAR(forwards[i].rate.value().perWeek, other.rate.value().perWeek, 1e-9);
    }
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
