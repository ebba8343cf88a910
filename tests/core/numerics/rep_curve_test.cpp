#include "core/numerics/rep_curve.h"

#include "core/numerics/rep_max.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

namespace steelyard {
namespace {

std::vector<RepCurvePoint> pointsOn(const RepCurve& curve, std::initializer_list<double> loads)
{
    std::vector<RepCurvePoint> points;
    for (const double load : loads) points.push_back({load, curve.repsAt(load)});
    return points;
}

TEST(RepCurve, LoadAndRepetitionsAreEachOthersInverse)
{
    const RepCurve curve{28, 0.9, std::log(120.0)};
    EXPECT_NEAR(curve.repsAt(120), 0, 1e-12);
    for (const double load : {40.0, 80.0, 119.0, 130.0}) EXPECT_NEAR(curve.loadAt(curve.repsAt(load)), load, 1e-10);
}

TEST(RepCurve, OfScale30AndEndurance1IsEpleys)
{
    const RepCurve curve{30, 1, std::log(oneRepMax(RepMaxEquation::Epley, 100, 5).value())};
    EXPECT_NEAR(curve.repsAt(100), 5, 1e-12);
}

TEST(FitRepCurve, FindsTheCurveThatSetsLieOn)
{
    const RepCurve truth{30, 0.8, std::log(110.0)};
    const auto fit = fitRepCurve(pointsOn(truth, {100, 90, 80, 70})).value();
    EXPECT_NEAR(fit.curve.endurance, 0.8, 1e-9);
    EXPECT_NEAR(fit.curve.logCapacity, truth.logCapacity, 1e-9);
    EXPECT_EQ(fit.curve.scale, 30);
    EXPECT_EQ(fit.scaleError, 0);
    EXPECT_LT(fit.residualSd, 1e-9);
    EXPECT_EQ(fit.points, 4u);
}

TEST(FitRepCurve, FindsTheScaleTooWhenLoadsAreFarApart)
{
    const RepCurve truth{24, 0.95, std::log(110.0)};
    const auto fit = fitRepCurveAndScale(pointsOn(truth, {105, 95, 80, 65, 50})).value();
    EXPECT_NEAR(fit.curve.scale, 24, 1e-6);
    EXPECT_NEAR(fit.curve.endurance, 0.95, 1e-7);
    EXPECT_NEAR(fit.curve.logCapacity, truth.logCapacity, 1e-9);
}

TEST(FitRepCurve, RefusesSetsThatDoNotMakeACurve)
{
    using Points = std::vector<RepCurvePoint>;
    EXPECT_FALSE(fitRepCurve(Points{}));
    EXPECT_FALSE(fitRepCurve(Points{{100, 3}, {80, 10}})) << "as many sets as parameters";
    EXPECT_FALSE(fitRepCurve(Points{{80, 9}, {80, 10}, {80, 11}})) << "one load";
    EXPECT_FALSE(fitRepCurve(Points{{100, 10}, {90, 8}, {80, 5}})) << "more repetitions with more load";
    EXPECT_FALSE(fitRepCurve(Points{{100, 8}, {90, 8}, {80, 8}})) << "the same repetitions with any load";
    EXPECT_FALSE(fitRepCurve(Points{{100, 3}, {90, 6}, {0, 10}}));
    EXPECT_FALSE(fitRepCurve(Points{{100, 3}, {90, 6}, {80, -1}}));
    EXPECT_FALSE(fitRepCurve(Points{{100, 3}, {90, 6}, {80, std::nan("")}}));
    EXPECT_FALSE(fitRepCurve(Points{{100, 3}, {90, 6}, {std::numeric_limits<double>::infinity(), 1}}));
    EXPECT_FALSE(fitRepCurve(Points{{100, 3}, {90, 6}, {80, 10}}, 0));
    EXPECT_TRUE(fitRepCurve(Points{{100, 3}, {90, 6}, {80, 10}}));
    EXPECT_FALSE(fitRepCurveAndScale(Points{{100, 3}, {90, 6}, {80, 10}})) << "as many sets as parameters";
    EXPECT_FALSE(fitRepCurveAndScale(Points{{100, 3}, {100, 4}, {80, 10}, {80, 11}})) << "two loads";
}

// Repetitions on a line that falls faster at light loads than any such curve: a free scale runs away, one that is held fits.
TEST(FitRepCurve, HasNoFreeScaleForSetsThatBendTheOtherWay)
{
    std::vector<RepCurvePoint> points;
    for (const double load : {50.0, 60.0, 70.0, 80.0, 90.0, 100.0})
        points.push_back({load, 20 - 18 * std::pow(load / 100, 3)});
    EXPECT_TRUE(fitRepCurve(points));
    const auto free = fitRepCurveAndScale(points);
    EXPECT_FALSE(free) << free->curve.scale << ' ' << free->curve.endurance;
}

}  // namespace
}  // namespace steelyard
