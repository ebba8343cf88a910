// Stated probabilities and how often they came true, as knots of a line that rises: one way to correct what a model says.
//
//   constexpr CalibrationKnot kKnots[] = {{0, 0.1}, {0.5, 0.4}, {1, 0.8}};
//   cameTrue(kKnots, 0.25)    == 0.25
//   statedFor(kKnots, 0.6)    == 0.75
//
// Between knots the line is straight; before the first and after the last one it stays at their values. At least two knots,
// rising in both numbers.
#pragma once

#include <span>

namespace steelyard {

struct CalibrationKnot {
    double stated = 0;
    double came = 0;
};

[[nodiscard]] double cameTrue(std::span<const CalibrationKnot> knots, double stated);
// What has to be stated for something to come true so often.
[[nodiscard]] double statedFor(std::span<const CalibrationKnot> knots, double came);

}  // namespace steelyard
