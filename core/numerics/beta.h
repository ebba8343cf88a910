// The beta distribution.
//
//   betaCdf(0.5, 4, 6)          == 0.74609375
//   betaQuantile(0.95, 7, 3)    == 0.9023...
//
// Units: none. Invariants: a and b above 0. Values outside [0, 1] have density 0; a probability is held within [0, 1].
// Accurate to about 1e-13. Failures: none.
#pragma once

namespace steelyard {

[[nodiscard]] double betaDensity(double x, double a, double b);
[[nodiscard]] double betaCdf(double x, double a, double b);
// The x with betaCdf(x, a, b) == probability.
[[nodiscard]] double betaQuantile(double probability, double a, double b);

}  // namespace steelyard
