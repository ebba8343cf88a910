#include "core/analysis/common_fall.h"

#include "core/analysis/lifter_tracker.h"
#include "core/analysis/regime_engine.h"
#include "tests/support/made_up_lifter.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LifterCase;
using testing_support::madeUpLifter;

const QDate kSunday(2026, 6, 7);
constexpr RegimeChances kUsual{0.60, 0.35, 0.05};
constexpr FallWitness kFalling{{0.1, 0.2, 0.7}, 2};
constexpr FallWitness kRising{{0.95, 0.04, 0.01}, 2};

double probabilityOf(const std::vector<FallWitness>& lines, const CommonFallPriors& priors = {})
{
    return commonFall(lines, kUsual, priors).probability;
}

TEST(CommonFall, FollowsItsEquations)
{
    // By hand: L = 0.05 * 0.1 / 0.6 + 0.15 * 0.2 / 0.35 + 0.8 * 0.7 / 0.05 = 11.2940476...; three lines are worth 3 / 1.2.
    const double likelihood = 0.05 * 0.1 / 0.6 + 0.15 * 0.2 / 0.35 + 0.8 * 0.7 / 0.05;
    const double odds = 0.02 / 0.98 * std::pow(likelihood, 3 / 1.2);
    EXPECT_NEAR(probabilityOf({kFalling, kFalling, kFalling}), odds / (1 + odds), 1e-12);
}

TEST(CommonFall, LinesThatSayNothingLeaveThePriorAlone)
{
    const FallWitness silent{kUsual, 0};
    EXPECT_NEAR(probabilityOf({silent, silent, silent, silent}), CommonFallPriors{}.atWork, 1e-12);
}

TEST(CommonFall, GrowsWithEveryLineThatFallsAndShrinksWithEveryLineThatRises)
{
    const double three = probabilityOf({kFalling, kFalling, kFalling});
    EXPECT_GT(probabilityOf({kFalling, kFalling, kFalling, kFalling}), three);
    EXPECT_LT(probabilityOf({kFalling, kFalling, kFalling, kRising}), three);
    EXPECT_LT(probabilityOf({kFalling, kRising, kRising, kRising, kRising, kRising}), 0.02);
}

TEST(CommonFall, NeedsThreeLinesThatWereTrainedLately)
{
    EXPECT_EQ(probabilityOf({kFalling, kFalling}), 0.0);
    FallWitness old = kFalling;
    old.daysSinceTrained = 21;
    EXPECT_GT(probabilityOf({kFalling, kFalling, old}), 0.5);
    old.daysSinceTrained = 22;
    EXPECT_EQ(probabilityOf({kFalling, kFalling, old}), 0.0);
    const CommonFall fall = commonFall(std::vector{kFalling, old, kFalling, kFalling}, kUsual);
    EXPECT_EQ(fall.witnesses, 3u);
    EXPECT_EQ(fall.falls, (std::vector{true, false, true, true}));
}

TEST(CommonFall, NamesTheLinesThatTakePart)
{
    const CommonFall fall = commonFall(std::vector{kFalling, kFalling, kRising, kFalling}, kUsual);
    EXPECT_EQ(fall.falls, (std::vector{true, true, false, true}));
    EXPECT_TRUE(fall.isOfMost());
    EXPECT_FALSE(commonFall(std::vector{kFalling, kRising, kRising, kFalling}, kUsual).isOfMost());
}

TEST(CommonFall, SurvivesCertainty)
{
    const FallWitness sure{{0, 0, 1}, 0};
    const FallWitness never{{1, 0, 0}, 0};
    EXPECT_GT(probabilityOf({sure, sure, sure, sure}), 0.98);
    EXPECT_GT(probabilityOf({never, never, never}), 0.0);
}

TEST(UsualChances, AreWhereTheFilterSettlesWhenItHearsNothing)
{
    const RegimeParameters parameters;
    RegimeFilter filter(parameters, {}, 1.0);
    const std::vector<RegimeObservation> first{{0, 0.3, 0.02, ObservationKind::Exact, 0}};
    filter.session(0, first);
    for (int week = 0; week < 300; ++week) filter.startWeek();
    const auto settled = filter.probabilities();
    const RegimeChances usual = usualChances(parameters);
    EXPECT_NEAR(usual.rising, settled[0], 1e-6);
    EXPECT_NEAR(usual.flat, settled[1], 1e-6);
    EXPECT_NEAR(usual.falling, settled[2], 1e-6);
}

// The first week, counted from `fromWeek`, that says so; absent: none does.
std::optional<std::size_t> firstSaid(const LifterCase& c, std::size_t fromWeek)
{
    static const ReadingParameters parameters;
    static const VerdictThresholds limits;
    static const RegimeChances usual = usualChances(parameters.filter);
    const AthleteLog log = madeUpLifter(c, kSunday);
    LifterTracker lifter(parameters, limits, log.athlete.value.experience);
    lifter.advance(log, countLines(log, kSunday), kSunday.addDays(1));
    std::vector<std::vector<TrackedWeek>> weeks;
    for (const LineRecord& record : log.lines) weeks.push_back(lifter.line(record.id).weeks());
    for (std::size_t week = fromWeek; week < weeks.front().size(); ++week) {
        std::vector<FallWitness> lines;
        for (const auto& line : weeks) lines.push_back({line[week].chances, 2});
        const CommonFall fall = commonFall(lines, usual);
        if (fall.probability >= limits.sureOfCommonFall && fall.isOfMost()) return week - fromWeek;
    }
    return std::nullopt;
}

// Other lifters than those that the priors were set on. The lines share readiness, bad days and half of the days' noise.
constexpr unsigned kFreshSeed = 50000;
constexpr int kLifters = 60;

TEST(CommonFall, IsSeldomSaidOfLinesThatGoTheirOwnWays)
{
    int said = 0;
    for (unsigned i = 0; i < kLifters; ++i) said += firstSaid({.seed = kFreshSeed + i}, 8).has_value();
    RecordProperty("said", said);
    EXPECT_LT(said, 0.05 * kLifters) << "at some week of 32";
}

TEST(CommonFall, TellsAFallOfAllLinesFromAFallOfOne)
{
    int withinFive = 0;
    int withinEight = 0;
    int ofOne = 0;
    for (unsigned i = 0; i < kLifters; ++i) {
        const unsigned seed = kFreshSeed + 1000 + i;
        const auto all = firstSaid({.fallsFromWeek = 20, .fall = 0.007, .weeks = 28, .seed = seed}, 20);
        withinFive += all && *all < 5;
        withinEight += all.has_value();
        ofOne += firstSaid({.fallingLines = 1, .fallsFromWeek = 20, .fall = 0.012, .weeks = 28, .seed = seed}, 20)
                     .has_value();
    }
    RecordProperty("within_five", withinFive);
    RecordProperty("within_eight", withinEight);
    RecordProperty("of_one", ofOne);
    // Within five weeks a fall of 0.7 % a week is 3.5 % in all, hardly more than two good days differ by.
    EXPECT_GE(withinFive, 0.20 * kLifters);
    EXPECT_GE(withinEight, 0.65 * kLifters);
    EXPECT_LE(ofOne, 0.10 * kLifters);
}

TEST(CommonFall, MarksTheReadingsThatItCovers)
{
    const AthleteLog log = madeUpLifter(
        {.lines = 7, .fallingLines = 6, .fallsFromWeek = 20, .fall = 0.012, .turns = false, .weeks = 30}, kSunday);
    const auto readings = RegimeEngine().readAll(log, kSunday);
    int slipping = 0;
    for (std::size_t i = 0; i < 6; ++i) {
        EXPECT_GT(readings[i].commonFall.value_or(0), 0.8) << i;
        if (readings[i].verdict != Verdict::Slipping) continue;
        ++slipping;
        EXPECT_EQ(readings[i].reason, QStringLiteral("whole_lifter"));
        EXPECT_TRUE(readings[i].why.contains(QStringLiteral("shared by most lifts (6 of 7)")))
            << qPrintable(readings[i].why);
    }
    EXPECT_GE(slipping, 3);
    EXPECT_FALSE(readings[6].commonFall);
    EXPECT_NE(readings[6].reason, QStringLiteral("whole_lifter"));
}

}  // namespace
}  // namespace steelyard
