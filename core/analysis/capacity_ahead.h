// Where the points of the weeks to come are likely to lie, if training goes on as it does: the capacity that a session's
// first set will show, for today and each of six weeks.
//
//   capacityAhead(tracker, context, *reading.next, asOf)       // asOf, a week later, ..., six weeks later
//   engine.ahead(record, log, reading, state, asOf)            // the same where it can be said (regime_engine.h)
//
// The filter goes on through weeks in which nothing is heard: every rise, stay or fall may end and another begin, so the
// bands widen. A set's own day and noise are in them, as in the forecast of one set (set_forecast.h), whose calibration
// they share; a set's strength becomes kilograms as the points of the record do. Weekdays are taken as usual ones.
//
// Units: kilograms of external load. The tracker has started; `next` is the set that is expected next time (its load and
// reserve). Failures: none.
#pragma once

#include "core/analysis/line_tracker.h"

namespace steelyard {

inline constexpr int kWeeksAhead = 6;

// One of these days.
struct CapacityAhead {
    QDate date;
    double medianKg = 0;
    double low50Kg = 0;
    double high50Kg = 0;
    double low80Kg = 0;
    double high80Kg = 0;
    double low95Kg = 0;
    double high95Kg = 0;
    friend bool operator==(const CapacityAhead&, const CapacityAhead&) = default;
};

[[nodiscard]] std::vector<CapacityAhead> capacityAhead(const LineTracker& tracker, const SetContext& context,
                                                       const Forecast& next, QDate asOf);

}  // namespace steelyard
