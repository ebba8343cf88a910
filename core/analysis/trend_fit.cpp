#include "core/analysis/trend_fit.h"

#include "core/numerics/distribution.h"
#include "core/numerics/robust_trend.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace steelyard {
namespace {

constexpr double kDaysAWeek = 7;
constexpr double kIntervalLevel = 0.90;
constexpr std::size_t kLevelPoints = 3;

double weeksBetween(QDate from, QDate to)
{
    return static_cast<double>(from.daysTo(to)) / kDaysAWeek;
}

double blendedNoise(double scale, std::size_t points, double fitted)
{
    const double n = std::max(0.0, static_cast<double>(points) - fitted);
    return std::sqrt((n * scale * scale + kNoiseWeight * kUsualNoise * kUsualNoise) / (n + kNoiseWeight));
}

struct PointSeries {
    std::vector<double> weeks;  // before the last day
    std::vector<double> ln;
};

PointSeries seriesOf(const std::vector<DatedEstimate>& points)
{
    PointSeries series;
    for (const DatedEstimate& point : points) {
        series.weeks.push_back(weeksBetween(points.back().date, point.date));
        series.ln.push_back(point.estimate.lnSystem);
    }
    return series;
}

TrendRate rateFrom(const TrendLine& line, const std::optional<SlopeInterval>& interval,
                   const std::optional<MannKendall>& test)
{
    TrendRate rate;
    rate.perWeek = std::expm1(line.slope);
    rate.low90 = interval ? std::expm1(interval->low) : -1.0;
    rate.high90 = interval ? std::expm1(interval->high) : 1.0;
    rate.pRising = normalCdf(test ? test->z : 0.0);
    rate.pFalling = 1.0 - rate.pRising;
    return rate;
}

}  // namespace

double TrendFit::lnAt(QDate date) const
{
    return lnLast + lnSlope * weeksBetween(last, date);
}

double TrendFit::errorAt(QDate date) const
{
    const double away = weeksBetween(last, date) - middleWeek;
    return noise * std::sqrt(1.0 / static_cast<double>(points) + (spread > 0 ? away * away / spread : 0.0));
}

std::optional<TrendFit> fitTrend(const std::vector<DatedEstimate>& points)
{
    if (points.size() < kLeastTrendPoints) return std::nullopt;
    const auto [weeks, ln] = seriesOf(points);
    const auto line = theilSen(weeks, ln);
    if (!line) return std::nullopt;
    TrendFit fit;
    fit.slope = rateFrom(*line, senInterval(weeks, ln, kIntervalLevel), mannKendall(weeks, ln));
    fit.noise = blendedNoise(robustScale(residuals(weeks, ln, *line)).value_or(0), points.size(), 2);
    fit.lnLast = line->intercept;
    fit.lnSlope = line->slope;
    fit.first = points.front().date;
    fit.last = points.back().date;
    fit.points = points.size();
    fit.middleWeek = std::accumulate(weeks.begin(), weeks.end(), 0.0) / static_cast<double>(weeks.size());
    for (const double week : weeks) fit.spread += (week - fit.middleWeek) * (week - fit.middleWeek);
    return fit;
}

std::optional<double> mostRise(const std::vector<DatedEstimate>& points, double sure)
{
    if (points.size() < kLeastTrendPoints) return std::nullopt;
    const auto [weeks, ln] = seriesOf(points);
    // A two-sided interval leaves half of what it leaves out at either end.
    const auto interval = senInterval(weeks, ln, 2 * sure - 1);
    if (!interval) return std::nullopt;
    return std::expm1(interval->high);
}

std::optional<TrendFit> fitLevel(const std::vector<DatedEstimate>& points)
{
    if (points.empty()) return std::nullopt;
    const std::size_t used = std::min(points.size(), kLevelPoints);
    std::vector<double> ln;
    for (std::size_t i = points.size() - used; i < points.size(); ++i) ln.push_back(points[i].estimate.lnSystem);
    TrendFit fit;
    fit.noise = blendedNoise(robustScale(ln).value_or(0), used, 1);
    fit.lnLast = *median(ln);
    fit.first = points[points.size() - used].date;
    fit.last = points.back().date;
    fit.points = used;
    return fit;
}

std::optional<QDate> lastCredibleImprovement(const std::vector<DatedEstimate>& points, double noise)
{
    if (points.empty()) return std::nullopt;
    QDate day = points.front().date;
    std::optional<double> best;
    for (std::size_t i = 0; i + 2 < points.size(); ++i) {
        const double middle =
            *median({points[i].estimate.lnSystem, points[i + 1].estimate.lnSystem, points[i + 2].estimate.lnSystem});
        if (best && middle <= *best + noise) continue;
        if (best) day = points[i + 1].date;
        best = middle;
    }
    return day;
}

}  // namespace steelyard
