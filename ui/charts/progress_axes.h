// The value axes of a progress chart for a stretch of its time axis: everything that is drawn within it, but for what lies
// beyond the scale.
//
//   const ProgressAxes axes = progressAxes(spec, chartDay(spec.from), chartDay(spec.to));
//
// Units: days as chartDay() gives them. A stretch without any value has the axes of nothing, 0 to 1.
#pragma once

#include "ui/charts/progress_spec.h"

namespace steelyard {

struct ProgressAxes {
    ChartAxis capacity;
    ChartAxis reps;
    friend bool operator==(const ProgressAxes&, const ProgressAxes&) = default;
};

[[nodiscard]] ProgressAxes progressAxes(const ProgressSpec& spec, double low, double high);

}  // namespace steelyard
