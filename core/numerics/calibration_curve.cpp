#include "core/numerics/calibration_curve.h"

#include <algorithm>

namespace steelyard {
namespace {

double alongKnots(std::span<const CalibrationKnot> knots, double x, double CalibrationKnot::*from,
                  double CalibrationKnot::*to)
{
    const auto above = std::ranges::find_if(knots, [&](const CalibrationKnot& knot) { return knot.*from >= x; });
    if (above == knots.begin()) return knots.front().*to;
    if (above == knots.end()) return knots.back().*to;
    const CalibrationKnot& below = *std::prev(above);
    return below.*to + ((*above).*to - below.*to) * (x - below.*from) / ((*above).*from - below.*from);
}

}  // namespace

double cameTrue(std::span<const CalibrationKnot> knots, double stated)
{
    return alongKnots(knots, stated, &CalibrationKnot::stated, &CalibrationKnot::came);
}

double statedFor(std::span<const CalibrationKnot> knots, double came)
{
    return alongKnots(knots, came, &CalibrationKnot::came, &CalibrationKnot::stated);
}

}  // namespace steelyard
