// Nonlinear least squares of a few parameters: Levenberg and Marquardt's method with derivatives given.
//
//   const ResidualFunction line = [&](std::span<const double> p, std::span<double> r, std::span<double> derivatives) {
//       for (std::size_t i = 0; i < x.size(); ++i) {
//           r[i] = p[0] + p[1] * x[i] - y[i];
//           derivatives[2 * i] = 1;
//           derivatives[2 * i + 1] = x[i];
//       }
//   };
//   leastSquares(line, x.size(), {0, 0})->parameters
//
// Units: the caller's. The result doesn't depend on the units of the parameters.
// Converged means: what a straight step could still take off the residuals is below 1e-6 of their length (Bates & Watts'
// criterion), or that step moves the parameters by less than 1e-8 of their own length. From there straight steps are taken
// until they get no shorter, which is where rounding sets in.
// Failures: fewer observations than parameters + 1, a start that isn't finite, residuals that aren't finite at the start, a
// solution where the derivatives don't tell the parameters apart, and no convergence within kMostSteps give nullopt.
// Sources: Levenberg 1944; Marquardt 1963, J SIAM 11:431-441; damping after Nielsen 1999, IMM-REP-1999-05; Bates & Watts
// 1988, Nonlinear Regression Analysis (all from memory).
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace steelyard {

// Fills the residuals (model minus observed) and their derivatives: residual by residual, each by all parameters. Values
// that aren't finite mean that the model doesn't exist there; the search then turns back.
using ResidualFunction =
    std::function<void(std::span<const double> parameters, std::span<double> residuals, std::span<double> derivatives)>;

struct LeastSquaresFit {
    std::vector<double> parameters;
    std::vector<double> standardErrors;  // from the derivatives at the solution
    double residualSumOfSquares = 0;
    double residualSd = 0;  // with observations - parameters degrees of freedom
    int steps = 0;
};

inline constexpr int kMostSteps = 1000;

[[nodiscard]] std::optional<LeastSquaresFit> leastSquares(const ResidualFunction& evaluate, std::size_t observations,
                                                          const std::vector<double>& start);

}  // namespace steelyard
