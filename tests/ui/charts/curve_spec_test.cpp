#include "ui/charts/curve_spec.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

LineCurve madeCurve()
{
    LineCurve curve;
    curve.curve = {kEpleyScale, 1.3, std::log(60.0)};
    curve.anchorKg = 45;
    const double reps = curve.curve.repsAt(45);
    curve.published = {kEpleyScale, 1, std::log(45.0) + std::log1p(reps / 30)};
    curve.enduranceSd = 0.1;
    curve.levelSd = 0.02;
    curve.ownShare = 0.7;
    for (const double kg : {40.0, 45.0, 50.0}) {
        CurveSet set;
        set.exposure = curve.sets.size();
        set.date = QDate(2026, 3, 2).addDays(static_cast<qint64>(set.exposure));
        set.loadKg = kg;
        set.repsToFailure = curve.curve.repsAt(kg);
        set.today = set.repsToFailure;
        set.exact = kg < 50;
        curve.sets.push_back(set);
    }
    return curve;
}

const PanelSeries& seriesOf(const PanelsSpec& spec, const QString& name)
{
    return *std::ranges::find_if(spec.panels[0].series,
                                 [&](const PanelSeries& one) { return one.name.startsWith(name); });
}

TEST(CurveSpec, NamesThePublishedCurveBehindTheLiftersOwn)
{
    const PanelsSpec spec = buildCurveSpec(madeCurve(), {.locale = QLocale::c()});
    EXPECT_TRUE(spec.panels[0].series[0].name.contains(QStringLiteral("Epley 1985")));
    const PanelSeries& own = seriesOf(spec, QStringLiteral("this lifter"));
    const PanelSeries& published = seriesOf(spec, QStringLiteral("published"));
    EXPECT_NE(own.line, published.line);
    ASSERT_FALSE(own.runs.empty() || published.runs.empty());
    // With an endurance above 1 the own curve is the steeper one: above Epley's for light loads, below for heavy ones.
    EXPECT_GT(own.runs[0].front().y(), published.runs[0].front().y());
    EXPECT_LT(own.runs[0].back().y(), published.runs[0].back().y());
}

TEST(CurveSpec, SetsNearFailureAreSolidAndBoundsHollow)
{
    const PanelsSpec spec = buildCurveSpec(madeCurve(), {.locale = QLocale::c()});
    const auto& exact = seriesOf(spec, QStringLiteral("set near failure")).points;
    const auto& bounds = seriesOf(spec, QStringLiteral("at least")).points;
    ASSERT_EQ(exact.size(), 2u);
    ASSERT_EQ(bounds.size(), 1u);
    EXPECT_FALSE(exact[0].hollow);
    EXPECT_TRUE(bounds[0].hollow);
    EXPECT_EQ(spec.stops.size(), 3u);
    EXPECT_EQ(spec.stops[2].exposure, 2);
    EXPECT_TRUE(spec.stops[2].words.contains(QStringLiteral("at least")));
}

TEST(CurveSpec, BandTakesInTheCurveAndIsNarrowestAtTheAnchor)
{
    const PanelsSpec spec = buildCurveSpec(madeCurve(), {.locale = QLocale::c()});
    const PanelSeries& own = seriesOf(spec, QStringLiteral("this lifter"));
    ASSERT_EQ(own.bandLow.size(), own.bandHigh.size());
    double least = 100;
    double at = 0;
    for (std::size_t i = 0; i < own.bandLow.size(); ++i) {
        EXPECT_LE(own.bandLow[i].y(), own.bandHigh[i].y());
        const double width = std::log1p(own.bandHigh[i].y() / 30) - std::log1p(own.bandLow[i].y() / 30);
        if (width < least) {
            least = width;
            at = own.bandLow[i].x();
        }
    }
    EXPECT_NEAR(at, 45, 0.5);
}

TEST(CurveSpec, IsInTheLiftersUnit)
{
    const PanelsSpec spec = buildCurveSpec(madeCurve(), {.locale = QLocale::c(), .unit = MassUnit::lb});
    EXPECT_TRUE(spec.axisTitle.contains(QStringLiteral("lb")));
    EXPECT_NEAR(spec.stops[0].x, 40 / 0.45359237, 1e-9);
    for (const QStringList& row : spec.table.rows) EXPECT_EQ(row.size(), spec.table.header.size());
}

}  // namespace
}  // namespace steelyard
