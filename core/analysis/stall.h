// Whether a line has stalled: not "no rise was seen", which a slow rise and no rise have in common, but "a rise worth
// waiting for is unlikely".
//
//   if (const auto stall = stallOf(evidence.usable, asOf, worthwhile, thresholds))   // the sessions it is read from
//       fitTrend(*stall)->slope.perWeek ...
//
// A look is the state of the last stallWindowWeeks weeks as of one day. It is
//   clear   enough exposures over enough weeks, and the upper bound of the slope is under the smallest worthwhile rise
//   open    no longer clear, perhaps, or with fewer exposures, but a rise is not likely
// A line has stalled when a look in the last stallMemoryWeeks weeks was clear, and clear the week before as well, and every
// weekly look since is at least open. So one good or bad session doesn't turn the word, and nothing is remembered but the
// record: the same record and day give the same answer.
//
// Units: `worthwhile` is a share of capacity a week. `usable` is oldest first, up to the day. Pure; no failures.
// Sources: verdict_thresholds.h.
#pragma once

#include "core/analysis/trend_fit.h"
#include "core/analysis/verdict_thresholds.h"

namespace steelyard {

// Absent: no stall.
[[nodiscard]] std::optional<std::vector<DatedEstimate>> stallOf(const std::vector<DatedEstimate>& usable, QDate asOf,
                                                                double worthwhile, const VerdictThresholds&);

}  // namespace steelyard
