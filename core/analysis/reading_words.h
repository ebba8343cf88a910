// The sentence that says why a line was read as it was.
#pragma once

#include "core/analysis/common_fall.h"
#include "core/analysis/line_gates.h"
#include "core/analysis/line_reading.h"
#include "core/base/wording.h"

namespace steelyard {

// Needs everything else of the reading.
[[nodiscard]] QString whySentence(const LineReading&, const LineGates&, const VerdictThresholds&, const Wording&);
// What to add to it for a line that falls with most of the others.
[[nodiscard]] QString sharedFallSentence(const CommonFall&);

}  // namespace steelyard
