// One lifter's own curve of repetitions to failure against load, fitted to what was lifted:
//
//   reps = scale * ((capacity / load)^endurance - 1)
//
// Epley's equation is this curve with scale 30 and endurance 1 for every lifter; here the lifter's sets say how steep it is.
//
//   const auto fit = fitRepCurve(sets);                   // scale held at 30
//   fit->curve.repsAt(80)                                 : repetitions to failure with 80 kg
//   fit->curve.loadAt(5)                                  : the load that leaves five
//   fit->enduranceError                                   : standard error
//
// Units: loads in kg, repetitions counted plus those in reserve, so they may be fractional.
// Invariants: endurance, scale and capacity are above zero: repetitions fall as the load rises. A curve only interpolates;
// it knows nothing of loads far from those it was fitted to.
// Failures: a load that isn't above zero, repetitions that are negative or not finite, fewer sets than parameters + 1, fewer
// different loads than parameters, repetitions that don't fall with the load, and no convergence (with a free scale: sets
// that no curve of this form fits better than its limits) give nullopt. Never NaN.
// Source: Epley 1985 for the form; fitted by least squares in the repetitions (R's nls is the check).
#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace steelyard {

struct RepCurvePoint {
    double loadKg = 0;
    double repsToFailure = 0;
};

inline constexpr double kEpleyScale = 30.0;

struct RepCurve {
    double scale = kEpleyScale;
    double endurance = 1;    // lambda
    double logCapacity = 0;  // natural logarithm of the load in kg that leaves no repetition

    // loadKg above zero. Negative for loads over the capacity.
    [[nodiscard]] double repsAt(double loadKg) const;
    // repsToFailure above -scale.
    [[nodiscard]] double loadAt(double repsToFailure) const;
};

struct RepCurveFit {
    RepCurve curve;
    double scaleError = 0;  // standard errors; 0 for a scale that was held
    double enduranceError = 0;
    double logCapacityError = 0;
    double residualSumOfSquares = 0;  // in repetitions squared
    double residualSd = 0;
    std::size_t points = 0;
};

// The scale held; endurance and capacity fitted.
[[nodiscard]] std::optional<RepCurveFit> fitRepCurve(std::span<const RepCurvePoint> points, double scale = kEpleyScale);
// All three fitted. Needs loads far apart; the scale's standard error says whether they were.
[[nodiscard]] std::optional<RepCurveFit> fitRepCurveAndScale(std::span<const RepCurvePoint> points);

}  // namespace steelyard
