// How far two measurements of the same thing lie apart by chance, and the smallest change between two of them that means
// anything.
//
//   const auto error = typicalError(differences);            // of successive measurements
//   if (error) smallestRealChange(*error, 0.9);              // beyond it in one of ten pairs by chance alone
//
// The typical error is the standard deviation of the differences over the square root of two: each difference carries the
// error of two measurements. A steady change between them is no error and drops out with the mean. Of logarithms it is a
// share, whose limits are exp(-change) and exp(+change).
// Source: Hopkins 2000, Sports Med 30:1-15; minimal detectable change z x typical error x sqrt 2: Weir 2005, JSCR
// 19(1):231-240.
//
// Units: the caller's. Absent when there are fewer than two differences.
#pragma once

#include <optional>
#include <span>

namespace steelyard {

[[nodiscard]] std::optional<double> typicalError(std::span<const double> differences);
// `confidence`: share of unchanged pairs that stay within, both sides together.
[[nodiscard]] double smallestRealChange(double typicalError, double confidence);

}  // namespace steelyard
