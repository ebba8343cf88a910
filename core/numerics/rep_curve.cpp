#include "core/numerics/rep_curve.h"

#include "core/numerics/least_squares.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace steelyard {
namespace {

bool isUsable(const RepCurvePoint& point)
{
    return std::isfinite(point.loadKg) && point.loadKg > 0.0 && std::isfinite(point.repsToFailure)
           && point.repsToFailure >= 0.0;
}

bool haveDifferentLoads(std::span<const RepCurvePoint> points, std::size_t wanted)
{
    std::vector<double> loads;
    for (const RepCurvePoint& point : points) loads.push_back(point.loadKg);
    std::ranges::sort(loads);
    return static_cast<std::size_t>(std::ranges::unique(loads).begin() - loads.begin()) >= wanted;
}

// log(1 + reps / scale) is straight in the logarithm of the load: its regression line starts the search.
std::optional<RepCurve> straightFit(std::span<const RepCurvePoint> points, double scale)
{
    const auto count = static_cast<double>(points.size());
    double meanX = 0;
    double meanZ = 0;
    for (const RepCurvePoint& point : points) {
        meanX += std::log(point.loadKg) / count;
        meanZ += std::log1p(point.repsToFailure / scale) / count;
    }
    double xx = 0;
    double xz = 0;
    for (const RepCurvePoint& point : points) {
        const double x = std::log(point.loadKg) - meanX;
        xx += x * x;
        xz += x * (std::log1p(point.repsToFailure / scale) - meanZ);
    }
    const double endurance = -xz / xx;
    if (!(endurance > 0.0) || !std::isfinite(endurance)) return std::nullopt;
    return RepCurve{scale, endurance, meanX + meanZ / endurance};
}

std::optional<RepCurveFit> toFit(const RepCurve& curve, const LeastSquaresFit& found, std::size_t points)
{
    if (!(curve.endurance > 0.0 && curve.scale > 0.0)) return std::nullopt;
    RepCurveFit fit;
    fit.curve = curve;
    fit.residualSumOfSquares = found.residualSumOfSquares;
    fit.residualSd = found.residualSd;
    fit.points = points;
    return fit;
}

}  // namespace

double RepCurve::repsAt(double loadKg) const
{
    return scale * std::expm1(endurance * (logCapacity - std::log(loadKg)));
}

double RepCurve::loadAt(double repsToFailure) const
{
    return std::exp(logCapacity - std::log1p(repsToFailure / scale) / endurance);
}

std::optional<RepCurveFit> fitRepCurve(std::span<const RepCurvePoint> points, double scale)
{
    constexpr std::size_t parameters = 2;
    if (!(std::isfinite(scale) && scale > 0.0) || points.size() <= parameters) return std::nullopt;
    if (!std::ranges::all_of(points, isUsable) || !haveDifferentLoads(points, parameters)) return std::nullopt;
    const auto start = straightFit(points, scale);
    if (!start) return std::nullopt;
    const auto evaluate = [&](std::span<const double> p, std::span<double> residuals, std::span<double> derivatives) {
        for (std::size_t i = 0; i < points.size(); ++i) {
            const double distance = p[1] - std::log(points[i].loadKg);
            const double power = scale * std::exp(p[0] * distance);
            residuals[i] = scale * std::expm1(p[0] * distance) - points[i].repsToFailure;
            derivatives[parameters * i] = power * distance;
            derivatives[parameters * i + 1] = power * p[0];
        }
    };
    const auto found = leastSquares(evaluate, points.size(), {start->endurance, start->logCapacity});
    if (!found) return std::nullopt;
    auto fit = toFit({scale, found->parameters[0], found->parameters[1]}, *found, points.size());
    if (!fit) return std::nullopt;
    fit->enduranceError = found->standardErrors[0];
    fit->logCapacityError = found->standardErrors[1];
    return fit;
}

std::optional<RepCurveFit> fitRepCurveAndScale(std::span<const RepCurvePoint> points)
{
    constexpr std::size_t parameters = 3;
    if (points.size() <= parameters || !haveDifferentLoads(points, parameters)) return std::nullopt;
    const auto held = fitRepCurve(points);
    if (!held) return std::nullopt;
    const auto evaluate = [&](std::span<const double> p, std::span<double> residuals, std::span<double> derivatives) {
        for (std::size_t i = 0; i < points.size(); ++i) {
            const double distance = p[2] - std::log(points[i].loadKg);
            const double rise = std::expm1(p[1] * distance);
            residuals[i] = p[0] * rise - points[i].repsToFailure;
            derivatives[parameters * i] = rise;
            derivatives[parameters * i + 1] = p[0] * (rise + 1.0) * distance;
            derivatives[parameters * i + 2] = p[0] * (rise + 1.0) * p[1];
        }
    };
    const auto found =
        leastSquares(evaluate, points.size(), {held->curve.scale, held->curve.endurance, held->curve.logCapacity});
    if (!found) return std::nullopt;
    auto fit = toFit({found->parameters[0], found->parameters[1], found->parameters[2]}, *found, points.size());
    if (!fit) return std::nullopt;
    fit->scaleError = found->standardErrors[0];
    fit->enduranceError = found->standardErrors[1];
    fit->logCapacityError = found->standardErrors[2];
    return fit;
}

}  // namespace steelyard
