// The sentences of a trial's verdict.
#pragma once

#include "core/trials/trial_verdict.h"

namespace steelyard {

// Of a verdict that is otherwise complete: fills forCoach, forLifter, restsOn, looks and weights.
void sayVerdict(const Trial&, const TrialRecord&, const std::vector<QString>& armNames, const Wording&, TrialVerdict&);

}  // namespace steelyard
