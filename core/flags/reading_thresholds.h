// The reading's thresholds as the coach set them. A threshold that a rule and the reading share is a parameter of the rule,
// and is taken from there; the others have their own default.
//
//   const RegimeEngine engine({}, readingThresholds(settings));   // on every screen and in the console alike
//
// Shared: `effort_unknown` percent and sessions; `stalled` caution; `whole_lifter_drop` percent. Pure; no failures.
#pragma once

#include "core/analysis/verdict_thresholds.h"
#include "core/domain/rule_settings.h"

namespace steelyard {

[[nodiscard]] VerdictThresholds readingThresholds(const RuleSettings&);

}  // namespace steelyard
