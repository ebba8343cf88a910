// Student's t distribution.
//
//   studentCdf(2.0, 3.5)    == 0.9366...
//
// Invariants: freedom > 0; accurate to about 1e-14. Failures: none.
#pragma once

namespace steelyard {

[[nodiscard]] double studentCdf(double t, double freedom);

}  // namespace steelyard
