// A robust line through the logarithm of capacity over recent exposures, with what chance alone could have done.
//
//   const auto fit = fitTrend(points);         // Theil-Sen slope, Sen's 90 % interval, Mann-Kendall test
//   fit->slope.perWeek;                        // shares of capacity a week
//   std::exp(fit->lnAt(date));                 // capacity on that day
//
// Units: weeks; natural logarithms. Failures: nullopt for fewer than kLeastTrendPoints points or fewer than two days.
// Sources: Sen 1968, JASA 63:1379-1389; Mann 1945; Kendall 1975.
#pragma once

#include "core/analysis/counting.h"

namespace steelyard {

inline constexpr std::size_t kLeastTrendPoints = 5;
// What sessions differ by when strength doesn't: 0.020 to 0.025 of ln capacity (Mitter et al. 2022). The scatter of a short
// series is blended with it, as if it had been seen kNoiseWeight times, so that four lucky points don't look exact.
inline constexpr double kUsualNoise = 0.0225;
inline constexpr double kNoiseWeight = 5;

struct DatedEstimate {
    QDate date;
    SetEstimate estimate;
    friend bool operator==(const DatedEstimate&, const DatedEstimate&) = default;
};

struct TrendFit {
    TrendRate slope;
    double noise = 0;   // SD of a session around the line
    double lnLast = 0;  // the line at the last day
    QDate first;
    QDate last;
    std::size_t points = 0;
    double lnSlope = 0;     // a week
    double middleWeek = 0;  // mean of the weeks before the last day
    double spread = 0;      // sum of squares of the weeks around it

    [[nodiscard]] double lnAt(QDate) const;
    // SD of the line itself on that day.
    [[nodiscard]] double errorAt(QDate) const;
};

[[nodiscard]] std::optional<TrendFit> fitTrend(const std::vector<DatedEstimate>& points);
// The upper end of Sen's interval for the slope, taken one-sided: with that much certainty the rise is no steeper. Shares of
// capacity a week. nullopt when the points are too few for the level, or fitTrend() has none; `sure` lies above 0.5.
[[nodiscard]] std::optional<double> mostRise(const std::vector<DatedEstimate>& points, double sure);
// Without a trend: the median of the last three points, for one to any number of points.
[[nodiscard]] std::optional<TrendFit> fitLevel(const std::vector<DatedEstimate>& points);

// The last day on which the median of three neighbouring sessions rose above all earlier ones by more than `noise`;
// the first day when none did. nullopt for no points.
[[nodiscard]] std::optional<QDate> lastCredibleImprovement(const std::vector<DatedEstimate>& points, double noise);

}  // namespace steelyard
