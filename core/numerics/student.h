// Student's t distribution.
//
//   studentCdf(2.0, 3.5)        == 0.9366...
//   studentQuantile(0.975, 9)   == 2.2621...
//
// Invariants: freedom > 0, 0 < probability < 1; accurate to about 1e-14. Failures: none.
#pragma once

namespace steelyard {

[[nodiscard]] double studentCdf(double t, double freedom);
// The t with studentCdf(t, freedom) == probability.
[[nodiscard]] double studentQuantile(double probability, double freedom);

}  // namespace steelyard
