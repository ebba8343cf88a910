// A lifter's own curve of repetitions to failure against load, as a chart of one panel: the curve of today with its 90 % band, the
// published one behind it, and on both the sets of the last weeks as they would be
// today. Solid: sets near failure; hollow: sets that stopped
// early or have no effort written down, and so say "at least".
//
//   const PanelsSpec spec = buildCurveSpec(*curveOfLine(engine, record, log, today), options);
//
// Published: Epley 1985, load x (1 + repetitions / 30), through the lifter's curve at the median load (line_curve.h). Across:
// load in the lifter's unit. The curves reach a tenth beyond the sets and no further. Stops are the loads that were used.
#pragma once

#include "core/analysis/line_curve.h"
#include "ui/charts/panels_spec.h"

namespace steelyard {

[[nodiscard]] PanelsSpec buildCurveSpec(const LineCurve& curve, const PanelsOptions& options);

}  // namespace steelyard
