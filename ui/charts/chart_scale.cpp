#include "ui/charts/chart_scale.h"

#include "core/numerics/robust_trend.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr std::size_t kLeastValues = 3;
constexpr double kDeviations = 6;
constexpr double kLeastShare = 0.6;
constexpr std::ptrdiff_t kSeries = 3;
constexpr double kWorthOfHeight = 1.0 / 3.0;

// Far values that follow one another are a series, whatever it is that made them.
void keepSeries(std::vector<Beyond>& beyond)
{
    for (auto from = beyond.begin(); from != beyond.end();) {
        const auto to = std::find_if(from, beyond.end(), [&](Beyond side) { return side != *from; });
        if (to - from >= kSeries) std::fill(from, to, Beyond::No);
        from = to;
    }
}

bool isWorthCutting(std::span<const double> values, const std::vector<Beyond>& beyond)
{
    std::vector<double> kept;
    for (std::size_t i = 0; i < values.size(); ++i)
        if (beyond[i] == Beyond::No) kept.push_back(values[i]);
    if (kept.empty() || kept.size() == values.size()) return false;
    const auto [low, high] = std::ranges::minmax(kept);
    const auto [lowest, highest] = std::ranges::minmax(values);
    return high - low < (highest - lowest) * kWorthOfHeight;
}

}  // namespace

std::vector<Beyond> beyondScale(std::span<const double> values, double leastReach)
{
    std::vector<Beyond> beyond(values.size(), Beyond::No);
    if (values.size() < kLeastValues) return beyond;
    const double middle = *median({values.begin(), values.end()});
    const double reach = std::max({kDeviations * *robustScale(values), kLeastShare * std::abs(middle), leastReach});
    for (std::size_t i = 0; i < values.size(); ++i)
        beyond[i] = values[i] > middle + reach   ? Beyond::Above
                    : values[i] < middle - reach ? Beyond::Below
                                                 : Beyond::No;
    keepSeries(beyond);
    if (!isWorthCutting(values, beyond)) std::ranges::fill(beyond, Beyond::No);
    return beyond;
}

}  // namespace steelyard
