// What `trial status` and `trial analyse` print: text for a person, JSON for a script. The status says nothing of results, but always
// what hurts.
#pragma once

#include "core/book/trial_reading.h"

#include <QtCore/QJsonObject>

namespace steelyard {

[[nodiscard]] QJsonObject trialStatusJson(const Trial&, const TrialAnalysis&);
[[nodiscard]] QString trialStatusText(const Trial&, const TrialAnalysis&);
[[nodiscard]] QJsonObject trialVerdictJson(const Trial&, const TrialAnalysis&);
[[nodiscard]] QString trialVerdictText(const Trial&, const TrialAnalysis&);

}  // namespace steelyard
