// The robust straight line through a line's last sessions: what a coach can check by eye beside the reading.
//
//   const auto window = plainWindow(counted);
//   const auto fit = fitTrend(window);      // trend_fit.h
//
// Sessions off the standard, without a known reserve and before the last break are left out. Pure; no failures.
#pragma once

#include "core/analysis/trend_fit.h"
#include "core/analysis/verdict_thresholds.h"

#include <span>

namespace steelyard {

// The last exposures that carry an estimate, oldest first.
[[nodiscard]] std::vector<DatedEstimate> plainWindow(std::span<const CountedExposure>, const VerdictThresholds&);

}  // namespace steelyard
