#include "core/numerics/distribution.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace steelyard {
namespace {

const double kLogSqrtTwoPi = 0.5 * std::log(2.0 * std::numbers::pi);
// Below this z std::erfc comes near the smallest normal double and loses digits.
constexpr double kFarTail = -35.0;
constexpr int kMostNewtonSteps = 60;
// From this z on the hazard's continued fraction needs no more than kFractionTerms terms.
constexpr double kFractionFrom = 3.0;
constexpr int kFractionTerms = 80;

// z < 0.5-quantile. log(cdf) is concave and rising, so Newton's steps from a point left of the root climb to it
// without ever passing it; cdf(z) <= exp(-z*z/2)/2 puts the start left of the root.
double lowerQuantile(double probability)
{
    const double logProbability = std::log(probability);
    double z = -std::sqrt(-2.0 * logProbability);
    for (int i = 0; i < kMostNewtonSteps; ++i) {
        const double logCdf = normalLogCdf(z);
        const double logDensity = -0.5 * z * z - kLogSqrtTwoPi;
        const double move = (logProbability - logCdf) * std::exp(logCdf - logDensity);
        z += move;
        if (std::abs(move) <= 1e-15 * std::abs(z)) break;
    }
    return z;
}

// hazard(z) - z for z >= kFractionFrom, from Laplace's continued fraction 1 / (z + 2 / (z + 3 / (z + ...)))
// (Abramowitz & Stegun 1964, 26.2.14).
double hazardExcess(double z)
{
    double tail = z;
    for (int k = kFractionTerms; k >= 2; --k) tail = z + k / tail;
    return 1.0 / tail;
}

}  // namespace

double normalCdf(double z)
{
    return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

double normalUpperTail(double z)
{
    return 0.5 * std::erfc(z / std::numbers::sqrt2);
}

double normalLogCdf(double z)
{
    if (z > 0.0) return std::log1p(-normalUpperTail(z));
    if (z > kFarTail) return std::log(normalCdf(z));
    // Asymptotic series of Mills' ratio (Abramowitz & Stegun 1964, 26.2.12); the first term left out is below 1e-12.
    const double inverse = 1.0 / (z * z);
    const double series = inverse * (-1.0 + inverse * (3.0 + inverse * (-15.0 + inverse * 105.0)));
    return -0.5 * z * z - kLogSqrtTwoPi - std::log(-z) + std::log1p(series);
}

double normalHazard(double z)
{
    if (z >= kFractionFrom) return z + hazardExcess(z);
    return std::exp(-0.5 * z * z - kLogSqrtTwoPi) / normalUpperTail(z);
}

double normalHazardSlope(double z)
{
    const double hazard = normalHazard(z);
    // Far left both are below the smallest double, also at minus infinity.
    if (hazard == 0.0) return 0.0;
    return hazard * (z >= kFractionFrom ? hazardExcess(z) : hazard - z);
}

double normalQuantile(double probability)
{
    if (!(probability >= 0.0 && probability <= 1.0)) return std::numeric_limits<double>::quiet_NaN();
    if (probability == 0.0) return -std::numeric_limits<double>::infinity();
    if (probability == 1.0) return std::numeric_limits<double>::infinity();
    if (probability == 0.5) return 0.0;
    return probability < 0.5 ? lowerQuantile(probability) : -lowerQuantile(1.0 - probability);
}

}  // namespace steelyard
