// A lifter's body mass and tape measurements over time, as a chart of panels: one for body mass, one for every place that was
// ever measured, in the order of the body.
//
//   const PanelsSpec spec = buildBodySpec({bodyMass, measurements}, {.unit = MassUnit::kg, .asOf = today});
//
// Units: body mass in that of the options, a place in the unit it was typed in last. Points are joined whatever lies between: an
// entry says what was so on its day, and nothing is read into the days between. Stops are the days with an entry.
#pragma once

#include "core/domain/measurement.h"
#include "ui/charts/panels_spec.h"

namespace steelyard {

struct BodyRecord {
    std::vector<BodyMassEntry> mass;        // oldest first
    std::vector<Measurement> measurements;  // oldest first
};

[[nodiscard]] PanelsSpec buildBodySpec(const BodyRecord& record, const PanelsOptions& options);

}  // namespace steelyard
