// Days of the week that differ are learned, days that don't are left alone.
#include "core/analysis/weekday_habits.h"

#include "core/analysis/line_explanation.h"
#include "core/analysis/set_forecast.h"
#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kMonday(2026, 3, 2);
const QDate kThursday = kMonday.addDays(3);

// Sessions on Mondays and Thursdays for so many weeks.
WeekdayHabits afterWeeks(int weeks, double monday, double thursday, double noise, unsigned seed)
{
    std::mt19937 random(seed);
    std::normal_distribution<double> bell;
    WeekdayHabits habits;
    for (int week = 0; week < weeks; ++week) {
        habits.take(kMonday.addDays(7 * week), monday + noise * bell(random));
        habits.take(kThursday.addDays(7 * week), thursday + noise * bell(random));
    }
    return habits;
}

TEST(WeekdayHabits, ALineOfOneDayHasNoEffect)
{
    WeekdayHabits habits;
    for (int week = 0; week < 30; ++week) habits.take(kMonday.addDays(7 * week), 0.1);
    EXPECT_EQ(habits.effectOn(kMonday), 0);
    EXPECT_EQ(habits.effectOn(kThursday), 0);
}

TEST(WeekdayHabits, DaysThatDifferAreLearnedAndTheirMeanIsNothing)
{
    double sum = 0;
    double chance = 0;
    for (unsigned seed = 1; seed <= 20; ++seed) {
        const auto habits = afterWeeks(26, 0.03, -0.03, 0.04, seed);
        sum += habits.effectOn(kMonday) / 20;
        EXPECT_NEAR(habits.effectOn(kMonday) + habits.effectOn(kThursday), 0, 0.002);
        EXPECT_EQ(habits.effectOn(kMonday.addDays(1)), 0);  // a day that is never trained
        chance += habits.chanceOfDifference() / 20;
    }
    EXPECT_NEAR(sum, 0.03, 0.006);
    EXPECT_GT(chance, 0.85);
}

TEST(WeekdayHabits, DaysThatAreAlikeAreLeftAlone)
{
    double squares = 0;
    double chance = 0;
    for (unsigned seed = 1; seed <= 200; ++seed) {
        const auto habits = afterWeeks(26, 0, 0, 0.04, seed);
        squares += std::pow(habits.effectOn(kMonday), 2) / 200;
        chance += habits.chanceOfDifference() / 200;
    }
    EXPECT_LT(std::sqrt(squares), 0.004);  // a tenth of a session's noise
    EXPECT_LT(chance, 0.25);
}

// The two marginal likelihoods by direct integration over the weekdays' effects, which are independent given the variance.
TEST(WeekdayHabits, TheChanceIsBayesFactorByIntegration)
{
    WeekdayHabits habits;
    constexpr int kWeeks = 3;
    for (int week = 0; week < kWeeks; ++week) {
        habits.take(kMonday.addDays(7 * week), 0.05);
        habits.take(kThursday.addDays(7 * week), -0.05);
    }
    // As the class keeps them: faded by 0.985 a session, variance shared with eight sessions of 0.045.
    double monday = 0;
    double thursday = 0;
    double awayMonday = 0;
    double awayThursday = 0;
    double squares = 0;
    const auto fade = [&] {
        for (double* one : {&monday, &thursday, &awayMonday, &awayThursday, &squares}) *one *= 0.985;
    };
    for (int week = 0; week < kWeeks; ++week) {
        fade();
        monday += 1;
        awayMonday += 0.05;
        squares += 0.0025;
        fade();
        thursday += 1;
        awayThursday -= 0.05;
        squares += 0.0025;
    }
    const double sessions = monday + thursday;
    const double variance = (squares + 8 * 0.045 * 0.045) / (sessions + 8);
    const double mean = (awayMonday + awayThursday) / sessions;
    const auto factor = [&](double n, double away) {
        const double about = away - n * mean;
        double sum = 0;
        constexpr double kStep = 1e-5;
        for (double c = -0.4; c < 0.4; c += kStep)
            sum += kStep * std::exp(-c * c / (2 * 0.0009) + (c * about - 0.5 * n * c * c) / variance)
                   / std::sqrt(2 * M_PI * 0.0009);
        return sum;
    };
    const double odds = 0.2 / 0.8 * factor(monday, awayMonday) * factor(thursday, awayThursday);
    EXPECT_NEAR(habits.chanceOfDifference(), odds / (1 + odds), 1e-6);
}

TEST(WeekdayHabits, OneBadDayIsNoHabit)
{
    auto habits = afterWeeks(10, 0, 0, 0.03, 4);
    habits.take(kMonday.addDays(70), -1);
    EXPECT_LT(std::abs(habits.effectOn(kMonday)), 0.01);
}

// Mondays reach twelve, Thursdays nine.
AthleteLog unevenLog(int weeks)
{
    LogBuilder builder = LogBuilder().line(QStringLiteral("Arm curl"));
    for (int week = 0; week < weeks; ++week) {
        builder.exposure(kMonday.addDays(7 * week), {MadeSet{.load = 40, .reps = 12, .off = 0, .rir = 0}});
        builder.exposure(kThursday.addDays(7 * week), {MadeSet{.load = 40, .reps = 9, .off = 0, .rir = 0}});
    }
    return builder.build();
}

TEST(WeekdayHabits, TheForecastIsForTheDay)
{
    const RegimeEngine engine;
    const AthleteLog log = unevenLog(16);
    const QDate sunday = kMonday.addDays(7 * 16 - 1);
    const LineTracker tracker = engine.track(log.lines.front(), log, sunday, {});
    const double lnLoad = std::log(40.0) - tracker.lnReference();
    EXPECT_NEAR(forecastSet(tracker, sunday.addDays(1), lnLoad, 1).reps(0.5), 12.5, 0.4);
    EXPECT_NEAR(forecastSet(tracker, sunday.addDays(4), lnLoad, 1).reps(0.5), 9.5, 0.4);
    EXPECT_NEAR(forecastSet(tracker, sunday.addDays(2), lnLoad, 1).reps(0.5), 11, 0.5);  // a day never trained
}

TEST(WeekdayHabits, TheExplanationNamesThemInLoad)
{
    const RegimeEngine engine;
    const AthleteLog log = unevenLog(16);
    const LineExplanation why = explainLine(engine, log.lines.front(), log, kMonday.addDays(7 * 16 - 1));
    EXPECT_GT(why.weekdayShares[0], 0.015);
    EXPECT_LT(why.weekdayShares[3], -0.015);
    EXPECT_EQ(why.weekdayShares[1], 0);
    const auto& last = why.sessions.back().sets.front();
    ASSERT_TRUE(last.expected);
    EXPECT_NEAR(last.expected->median, 9.5, 0.4);
    EXPECT_GT(last.weight, 0.9);
}

}  // namespace
}  // namespace steelyard
