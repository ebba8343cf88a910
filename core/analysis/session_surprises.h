// How far a session was from what was to be expected of it the moment before.
//
//   if (const auto surprise = surpriseOf(tracker, exposure, heard)) ...   // before the tracker has taken it in
//
// The first working set counts that says exactly how strong the lifter was; later sets depend on it. The expectation is that
// of the likeliest case of noise and experience (line_tracker.h) for a usual day.
// Absent in the first sessions of a line, where everything is news, and without such a set.
//
// Pure; no failures.
#pragma once

#include "core/analysis/line_tracker.h"

namespace steelyard {

[[nodiscard]] std::optional<SessionSurprise> surpriseOf(const LineTracker& before, const Exposure&,
                                                        const HeardSession&);

}  // namespace steelyard
