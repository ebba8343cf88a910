#include "core/numerics/robust_trend.h"

#include "core/numerics/distribution.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

bool isSeries(std::span<const double> x, std::span<const double> y)
{
    const auto finite = [](double value) { return std::isfinite(value); };
    return x.size() == y.size() && std::all_of(x.begin(), x.end(), finite)
           && std::all_of(y.begin(), y.end(), finite);
}

std::vector<double> pairSlopes(std::span<const double> x, std::span<const double> y)
{
    std::vector<double> slopes;
    slopes.reserve(x.size() * (x.size() - std::min<std::size_t>(x.size(), 1)) / 2);
    for (std::size_t i = 0; i < x.size(); ++i)
        for (std::size_t j = i + 1; j < x.size(); ++j)
            if (x[i] != x[j]) slopes.push_back((y[j] - y[i]) / (x[j] - x[i]));
    return slopes;
}

// Sums over groups of equal values, as Kendall's variance needs them.
struct TieSums {
    double pairs = 0;    // t (t - 1)
    double triples = 0;  // t (t - 1) (t - 2)
    double variance = 0; // t (t - 1) (2 t + 5)
};

TieSums tieSums(std::span<const double> values)
{
    std::vector<double> sorted(values.begin(), values.end());
    std::sort(sorted.begin(), sorted.end());
    TieSums sums;
    for (auto group = sorted.begin(); group != sorted.end();) {
        const auto end = std::upper_bound(group, sorted.end(), *group);
        const auto t = static_cast<double>(end - group);
        sums.pairs += t * (t - 1);
        sums.triples += t * (t - 1) * (t - 2);
        sums.variance += t * (t - 1) * (2 * t + 5);
        group = end;
    }
    return sums;
}

// Kendall 1975 with ties in both variables; without ties in x it is the Mann-Kendall variance. Needs n >= 3.
double varianceOfS(std::span<const double> x, std::span<const double> y)
{
    const auto n = static_cast<double>(x.size());
    const TieSums inX = tieSums(x);
    const TieSums inY = tieSums(y);
    return (n * (n - 1) * (2 * n + 5) - inX.variance - inY.variance) / 18
           + inX.triples * inY.triples / (9 * n * (n - 1) * (n - 2)) + inX.pairs * inY.pairs / (2 * n * (n - 1));
}

int signOf(double value)
{
    return value > 0 ? 1 : value < 0 ? -1 : 0;
}

}  // namespace

std::optional<double> median(std::vector<double> values)
{
    if (values.empty()) return std::nullopt;
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    if (values.size() % 2 == 1) return *middle;
    return 0.5 * (*std::max_element(values.begin(), middle) + *middle);
}

std::optional<double> robustScale(std::span<const double> values)
{
    std::vector<double> deviations(values.begin(), values.end());
    const auto centre = median(deviations);
    if (!centre) return std::nullopt;
    for (double& value : deviations) value = std::abs(value - *centre);
    return kDeviationToSd * *median(std::move(deviations));
}

std::optional<TrendLine> theilSen(std::span<const double> x, std::span<const double> y, InterceptRule rule)
{
    if (!isSeries(x, y)) return std::nullopt;
    std::vector<double> slopes = pairSlopes(x, y);
    TrendLine line;
    line.pairs = slopes.size();
    const auto slope = median(std::move(slopes));
    if (!slope) return std::nullopt;
    line.slope = *slope;
    if (rule == InterceptRule::MediansApart)
        line.intercept = *median({y.begin(), y.end()}) - line.slope * *median({x.begin(), x.end()});
    else
        line.intercept = *median(residuals(x, y, line));  // the intercept is still 0 here
    return line;
}

std::vector<double> residuals(std::span<const double> x, std::span<const double> y, const TrendLine& line)
{
    std::vector<double> left(std::min(x.size(), y.size()));
    for (std::size_t i = 0; i < left.size(); ++i) left[i] = y[i] - line.at(x[i]);
    return left;
}

std::optional<SlopeInterval> senInterval(std::span<const double> x, std::span<const double> y, double level)
{
    if (!isSeries(x, y) || x.size() < 3 || !(level > 0.0 && level < 1.0)) return std::nullopt;
    std::vector<double> slopes = pairSlopes(x, y);
    const auto count = static_cast<double>(slopes.size());
    const double reach = normalQuantile(0.5 + 0.5 * level) * std::sqrt(varianceOfS(x, y));
    // Ranks counted from 1: from the lowRank-th slope to the highRank-th.
    const double lowRank = std::round((count - reach) / 2);
    const double highRank = std::round((count + reach) / 2) + 1;
    if (!(lowRank >= 1 && highRank <= count)) return std::nullopt;
    std::sort(slopes.begin(), slopes.end());
    return SlopeInterval{slopes[static_cast<std::size_t>(lowRank) - 1], slopes[static_cast<std::size_t>(highRank) - 1]};
}

std::optional<MannKendall> mannKendall(std::span<const double> x, std::span<const double> y)
{
    if (!isSeries(x, y) || x.size() < 3) return std::nullopt;
    MannKendall test;
    bool ties = false;
    for (std::size_t i = 0; i < x.size(); ++i)
        for (std::size_t j = i + 1; j < x.size(); ++j) {
            const int sign = signOf(x[j] - x[i]) * signOf(y[j] - y[i]);
            ties = ties || sign == 0;
            test.s += sign;
        }
    test.variance = varianceOfS(x, y);
    if (test.s != 0 && test.variance > 0)
        test.z = static_cast<double>(test.s - (test.s > 0 ? 1 : -1)) / std::sqrt(test.variance);
    test.exact = !ties && x.size() <= kMostPointsExact;
    test.pTwoSided =
        test.exact ? exactTwoSidedP(x.size(), test.s) : std::min(1.0, 2 * normalUpperTail(std::abs(test.z)));
    return test;
}

double exactTwoSidedP(std::size_t n, std::int64_t s)
{
    // counts[k]: orders with k falling pairs; putting in the m-th value adds 0 to m - 1 of them.
    std::vector<double> counts{1.0};
    for (std::size_t m = 2; m <= n; ++m) {
        std::vector<double> next(counts.size() + m - 1, 0.0);
        for (std::size_t k = 0; k < counts.size(); ++k)
            for (std::size_t added = 0; added < m; ++added) next[k + added] += counts[k];
        counts = std::move(next);
    }
    const auto pairs = static_cast<std::int64_t>(counts.size()) - 1;
    const std::int64_t distance = s < 0 ? -s : s;
    double tail = 0;
    double all = 0;
    for (std::int64_t k = 0; k <= pairs; ++k) {
        const double orders = counts[static_cast<std::size_t>(k)];
        all += orders;
        if (pairs - 2 * k >= distance) tail += orders;
    }
    return std::min(1.0, 2 * tail / all);
}

}  // namespace steelyard
