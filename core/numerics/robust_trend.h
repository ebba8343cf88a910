// Trend of a short, noisy series that a few wild points can't turn: Theil-Sen slope, Sen's interval, Mann-Kendall test.
//
//   const std::vector<double> week{1, 2, 3, 4, 10, 12, 18}, kg{9, 15, 19, 20, 45, 55, 78};
//   theilSen(week, kg)->slope                 == 4.0
//   senInterval(week, kg, 0.93)               == {3.71, 4.38}
//   mannKendall(week, kg)->pTwoSided          : probability of so steady a rise or fall by chance
//
// Units: x in any unit of time (needn't be equidistant, needn't be sorted), slopes in y per x.
// Pairs with equal x say nothing about a slope and are left out of it. All of it takes n * n / 2 steps.
// Failures: x and y of different length, or a value that isn't finite, give nullopt; so do series that are too short
// (said at each function).
// Sources: Theil 1950; Sen 1968, JASA 63:1379-1389; Mann 1945; Kendall 1975, Rank Correlation Methods.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace steelyard {

// Median; the mean of the middle two for an even count. nullopt for none.
[[nodiscard]] std::optional<double> median(std::vector<double> values);

// 1 / normalQuantile(0.75): makes the median absolute deviation estimate a normal SD. Rounded as in R's mad().
inline constexpr double kDeviationToSd = 1.4826;
// Median absolute deviation from the median, times kDeviationToSd. nullopt for none.
[[nodiscard]] std::optional<double> robustScale(std::span<const double> values);

enum class InterceptRule {
    MedianResidual,  // median of y - slope * x: as many points above the line as below (scipy's "joint")
    MediansApart,    // median of y - slope * median of x (Sen's; scipy's "separate")
};

struct TrendLine {
    double slope = 0;
    double intercept = 0;  // y at x == 0
    std::size_t pairs = 0;  // pairs of points behind the slope
    [[nodiscard]] double at(double x) const { return intercept + slope * x; }
};

// Needs two points of different x.
[[nodiscard]] std::optional<TrendLine> theilSen(std::span<const double> x, std::span<const double> y,
                                                InterceptRule rule = InterceptRule::MedianResidual);
// y - line.at(x), point by point.
[[nodiscard]] std::vector<double> residuals(std::span<const double> x, std::span<const double> y,
                                            const TrendLine& line);

struct SlopeInterval {
    double low = 0;
    double high = 0;
};

// Sen's interval for the slope: ranks (N -+ z * sd(S)) / 2 of the sorted pair slopes, rounded to the nearest rank.
// nullopt as well when the points are too few for that level (four points can't give a 95 % interval).
[[nodiscard]] std::optional<SlopeInterval> senInterval(std::span<const double> x, std::span<const double> y,
                                                       double level);

struct MannKendall {
    std::int64_t s = 0;    // rising pairs minus falling pairs
    double variance = 0;   // of s if there were no trend, with ties in y and in x
    double z = 0;          // (s -+ 1) / sd: continuity-corrected; 0 when s is 0 or everything is tied
    double pTwoSided = 1;  // exact when `exact`, else from z
    bool exact = false;    // counted over all orders: at most kMostPointsExact points and no ties
};

inline constexpr std::size_t kMostPointsExact = 10;

// Needs three points.
[[nodiscard]] std::optional<MannKendall> mannKendall(std::span<const double> x, std::span<const double> y);

// Probability of |S| >= |s| when all orders of n different values are equally likely; n from 2 to kMostPointsExact.
[[nodiscard]] double exactTwoSidedP(std::size_t n, std::int64_t s);

}  // namespace steelyard
