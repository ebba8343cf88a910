#include "core/analysis/line_curve.h"

#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 28);

// A lifter of constant strength with this endurance: sessions to failure, heavy and light in turn.
LogBuilder steady(double endurance, double lightKg, double heavyKg)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Curl")).exposures(40, kToday, 4, [&](int i) {
        const double load = i % 2 ? heavyKg : lightKg;
        const double reps = 30 * std::expm1(endurance * std::log(60 / load));
        return MadeSet{.load = load, .reps = static_cast<int>(std::lround(reps - 0.5)), .off = 0, .rir = 0};
    });
    return builder;
}

TEST(LineCurve, LearnsHowSteepTheLiftersCurveIs)
{
    const RegimeEngine engine;
    for (const double endurance : {0.95, 1.45}) {
        const AthleteLog log = steady(endurance, 40, 52).build();
        const auto curve = curveOfLine(engine, log.lines[0], log, kToday);
        ASSERT_TRUE(curve);
        EXPECT_NEAR(curve->curve.endurance, endurance, 0.12);
        EXPECT_GT(curve->ownShare, 0.5);
        for (const double load : {40.0, 46.0, 52.0})
            EXPECT_NEAR(curve->curve.repsAt(load), 30 * std::expm1(endurance * std::log(60 / load)), 1.0);
    }
}

TEST(LineCurve, ThePublishedCurveIsEpleysThroughTheLiftersOwn)
{
    const AthleteLog log = steady(1.4, 40, 52).build();
    const auto curve = curveOfLine(RegimeEngine(), log.lines[0], log, kToday);
    ASSERT_TRUE(curve);
    EXPECT_NEAR(curve->published.repsAt(curve->anchorKg), curve->curve.repsAt(curve->anchorKg), 1e-9);
    // Epley 1985: one maximum = load x (1 + reps / 30), whatever the load it is asked from.
    const double maximum = curve->anchorKg * (1 + curve->published.repsAt(curve->anchorKg) / 30);
    for (const double load : {40.0, 45.0, 52.0})
        EXPECT_NEAR(load * (1 + curve->published.repsAt(load) / 30), maximum, 1e-9);
}

TEST(LineCurve, IsNotSaidFromSetsAtOneLoadOrFewOfThem)
{
    const RegimeEngine engine;
    const AthleteLog alike = steady(1.2, 45, 45).build();
    EXPECT_FALSE(curveOfLine(engine, alike.lines[0], alike, kToday));
    LogBuilder few;
    few.line(QStringLiteral("Curl")).exposures(3, kToday, 4, [](int i) {
        return MadeSet{.load = 40.0 + 5 * i, .reps = 10 - i, .off = 0, .rir = 1};
    });
    EXPECT_FALSE(curveOfLine(engine, few.build().lines[0], few.build(), kToday));
    LogBuilder none;
    none.line(QStringLiteral("Curl"));
    EXPECT_FALSE(curveOfLine(engine, none.build().lines[0], none.build(), kToday));
}

TEST(LineCurve, SetsThatStoppedEarlyOrWithoutEffortBoundItFromBelowOnly)
{
    LogBuilder builder = steady(1.2, 40, 52);
    builder.exposure(kToday.addDays(1),
                     {{.load = 44, .reps = 5, .off = 0, .rir = 7}, {.load = 44, .reps = 6, .off = 0}});
    const AthleteLog log = builder.build();
    const auto curve = curveOfLine(RegimeEngine(), log.lines[0], log, kToday.addDays(1));
    ASSERT_TRUE(curve && curve->sets.size() > 2);
    EXPECT_FALSE(curve->sets.back().exact);
    EXPECT_FALSE(curve->sets[curve->sets.size() - 2].exact);
    EXPECT_TRUE(curve->sets.front().exact);
    EXPECT_GE(curve->sets.front().date, kToday.addDays(2 - 7 * kCurveWeeks));
}

// Strength rises by 0.5 % a week at one endurance: sets of long ago lie under today's curve as they were lifted, and on it when
// they are moved.
TEST(LineCurve, MovesOlderSetsToTodaysStrength)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Curl")).exposures(60, kToday, 4, [](int i) {
        const double load = i % 2 ? 52 : 40;
        const double capacity = 60 * std::exp(0.005 * (i - 59) * 4 / 7.0);
        const double reps = 30 * std::expm1(1.2 * std::log(capacity / load));
        return MadeSet{.load = load, .reps = static_cast<int>(std::lround(reps - 0.5)), .off = 0, .rir = 0};
    });
    const AthleteLog log = builder.build();
    const auto curve = curveOfLine(RegimeEngine(), log.lines[0], log, kToday);
    ASSERT_TRUE(curve);
    double asLifted = 0;
    double moved = 0;
    int old = 0;
    for (const CurveSet& set : curve->sets) {
        if (set.date > kToday.addDays(-84)) continue;
        asLifted += set.repsToFailure - curve->curve.repsAt(set.loadKg);
        moved += set.today - curve->curve.repsAt(set.loadKg);
        ++old;
    }
    ASSERT_GT(old, 10);
    EXPECT_LT(asLifted / old, -2);
    EXPECT_NEAR(moved / old, 0, 0.7);
}

TEST(LineCurve, TurnsKilogramsMovedIntoTheLoadThatHangsOnTheBody)
{
    LineCurve curve;
    curve.bodyKg = 80;
    for (const Loading loading : {Loading::Added, Loading::Assisted}) {
        curve.loading = loading;
        EXPECT_DOUBLE_EQ(curve.loadKg(curve.movedKg(12.5)), 12.5);
    }
    EXPECT_DOUBLE_EQ(curve.movedKg(30), 50);
}

}  // namespace
}  // namespace steelyard
