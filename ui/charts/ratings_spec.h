// What was said and seen of the sessions of one lift line, as a chart of panels. At the left how it felt: tension, burn and pump
// in the target, what gave out first, discomfort by joint, soreness and weakness the day after. At the right how alike the
// repetitions were: the counted share, the marks of those off standard, the travel of each repetition, the seconds of lowering. The line's capacity stands
// above both, small, so that a rise can be held against what it was paid with.
//
//   const PanelsSpec spec = buildRatingsSpec({log, record, reading}, {.asOf = today});
//
// Ratings are of 10 and not rated is no point, never zero. Joints are those ever rated above 0 in this stretch on any lift:
// solid where the rating was given for this line, hollow for the worst of the day's other lifts. Their zones are those of
// the pain-monitoring model (core/analysis/discomfort_zones.h). The counted share is that of the watched repetitions. A panel
// without a single point is left out and named in `summary`. Stops are the line's sessions.
#pragma once

#include "core/analysis/line_reading.h"
#include "core/analysis/repetition_consistency.h"
#include "ui/charts/panels_spec.h"

namespace steelyard {

struct RatingsSource {
    const AthleteLog& log;
    const LineRecord& record;
    const LineReading& reading;
    std::span<const SetRepetitions> repetitions = {};  // of the lifter, by set
};

[[nodiscard]] PanelsSpec buildRatingsSpec(const RatingsSource& source, const PanelsOptions& options);

}  // namespace steelyard
