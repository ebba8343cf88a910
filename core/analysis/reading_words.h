// The sentence that says why a line was read as it was.
#pragma once

#include "core/analysis/line_evidence.h"
#include "core/base/wording.h"

namespace steelyard {

// Needs reading.verdict, reason, rate and since.
[[nodiscard]] QString whySentence(const LineReading& reading, const LineEvidence& evidence,
                                  const VerdictThresholds& thresholds, const Wording& wording);

}  // namespace steelyard
