// A lifter's training by week as a chart of panels: at the left session effort, its monotony and strain and the volume load,
// beside them the weekly sets of each muscle with the lifter's aim as a zone; deloads shaded, planned
// ones and weeks of nothing but deload sets.
//
//   const PanelsSpec spec = buildTrainingSpec(log, {.unit = MassUnit::kg, .asOf = today});
//
// Muscles with an aim come first, then those trained most; all share one scale, so that their heights compare. The week that
// isn't over is hollow. Session effort, monotony and strain: core/analysis/workload.h; sets: weekly_sets.h. Stops are weeks.
#pragma once

#include "ui/charts/panels_spec.h"

namespace steelyard {

inline constexpr int kMusclePanels = 12;  // more stand in the table

[[nodiscard]] PanelsSpec buildTrainingSpec(const AthleteLog& log, const PanelsOptions& options);

}  // namespace steelyard
