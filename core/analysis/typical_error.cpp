#include "core/analysis/typical_error.h"

#include "core/numerics/distribution.h"

#include <cmath>
#include <numbers>
#include <numeric>

namespace steelyard {

std::optional<double> typicalError(std::span<const double> differences)
{
    if (differences.size() < 2) return std::nullopt;
    const auto count = static_cast<double>(differences.size());
    const double mean = std::accumulate(differences.begin(), differences.end(), 0.0) / count;
    double squares = 0;
    for (const double difference : differences) squares += (difference - mean) * (difference - mean);
    return std::sqrt(squares / (count - 1)) / std::numbers::sqrt2;
}

double smallestRealChange(double typicalError, double confidence)
{
    return normalQuantile(0.5 + confidence / 2) * typicalError * std::numbers::sqrt2;
}

}  // namespace steelyard
