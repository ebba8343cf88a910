#include "core/analysis/trend_fit.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

const QDate kStart(2026, 1, 5);

std::vector<DatedEstimate> weekly(const std::vector<double>& ln)
{
    std::vector<DatedEstimate> points;
    for (std::size_t i = 0; i < ln.size(); ++i)
        points.push_back({kStart.addDays(7 * static_cast<qint64>(i)), SetEstimate{ln[i], 0, true}});
    return points;
}

TEST(TrendFit, FindsTheSlopeOfAStraightLineExactly)
{
    const auto fit = fitTrend(weekly({4.00, 4.01, 4.02, 4.03, 4.04, 4.05}));
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->slope.perWeek, std::expm1(0.01), 1e-12);
    EXPECT_NEAR(fit->lnAt(kStart.addDays(35)), 4.05, 1e-12);
    EXPECT_NEAR(fit->lnAt(kStart), 4.00, 1e-12);
    EXPECT_GT(fit->slope.pRising, 0.99);
    EXPECT_NEAR(fit->slope.pRising + fit->slope.pFalling, 1.0, 1e-12);
}

TEST(TrendFit, IsNotTurnedByOneWildPoint)
{
    const auto fit = fitTrend(weekly({4.00, 4.01, 4.02, 6.30, 4.04, 4.05, 4.06}));
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->slope.perWeek, 0.01, 0.002);
}

TEST(TrendFit, NeedsFivePoints)
{
    EXPECT_FALSE(fitTrend(weekly({4.0, 4.1, 4.2, 4.3})));
    EXPECT_TRUE(fitTrend(weekly({4.0, 4.1, 4.2, 4.3, 4.4})));
    EXPECT_FALSE(fitTrend({}));
}

TEST(TrendFit, NeverTakesAShortSeriesForExact)
{
    const auto fit = fitTrend(weekly({4.00, 4.01, 4.02, 4.03, 4.04}));
    ASSERT_TRUE(fit);
    EXPECT_GT(fit->noise, 0.015);
    EXPECT_GT(fit->errorAt(fit->last), fit->errorAt(kStart.addDays(14)));
}

TEST(TrendFit, GivesALevelFromOnePoint)
{
    const auto level = fitLevel(weekly({4.2}));
    ASSERT_TRUE(level);
    EXPECT_DOUBLE_EQ(level->lnLast, 4.2);
    EXPECT_GT(level->errorAt(kStart), 0.0);
    EXPECT_FALSE(fitLevel({}));
}

TEST(TrendFit, DatesTheLastImprovementThatNoiseDoesNotExplain)
{
    const auto points = weekly({4.00, 4.00, 4.05, 4.05, 4.10, 4.10, 4.10, 4.11, 4.10, 4.10});
    EXPECT_EQ(lastCredibleImprovement(points, 0.02), kStart.addDays(7 * 4));
    EXPECT_EQ(lastCredibleImprovement(weekly({4.1, 4.0, 4.0, 4.3, 4.0, 4.0}), 0.02), kStart);
    EXPECT_FALSE(lastCredibleImprovement({}, 0.02));
}

}  // namespace
}  // namespace steelyard
