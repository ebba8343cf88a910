// The numbers of a reading, out of the state of a tracked line: rate, capacity, next set, onset, and how long it would take
// to tell a stop from slow progress.
//
// Units as in line_reading.h. Pure; the tracker has started.
#pragma once

#include "core/analysis/line_tracker.h"

namespace steelyard {

// Growth of load a week with its 90 % interval; the chances are calibrated (verdict_rules.h).
[[nodiscard]] TrendRate rateOf(const LineTracker&);
// Growth of load a week that one rising lifter in twenty of this experience is faster than; when nobody wrote it down, of
// the experience that the record tells.
[[nodiscard]] double fastPaceOf(const LineTracker&, std::optional<Experience>);
// `bodyKg`: kilograms moved that are not external load.
[[nodiscard]] CapacityEstimate capacityOf(const LineTracker&, double bodyKg);
// Mean of lambda: what a unit of ln load costs this lifter in z.
[[nodiscard]] double elasticityOf(const LineTracker&);
// Mean of phi: what each earlier set of a session costs in z.
[[nodiscard]] double fatigueOf(const LineTracker&);

struct Onset {
    QDate since;
    std::optional<QDate> earliest;  // absent: maybe before the filter's memory
    QDate latest;
};
// Since about when the line hasn't been rising.
[[nodiscard]] Onset onsetOf(const LineTracker&, QDate day);

// Weeks until a stop of a lifter's pace shows at one false alarm a year: (6 s^2 ln(52) / b^2)^(1/3) with s^2 the variance of
// a week's mean and b the pace, from the likelihood-ratio detector that knows everything; slightly pessimistic.
[[nodiscard]] double weeksToTell(const LineTracker&, double exposuresAWeek);

}  // namespace steelyard
