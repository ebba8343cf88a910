// The words of a trial: how it stands, what is missing, what hurts, what was said.
//
//   format::trialState(trial)                      "runs" · "concluded 3 Mar 2027: B (neutral)"
//   format::standingWords(trial, standing, names)  "A (supinated): 3 done, 3 to come. …"
//   format::vetoWords(veto, trial, names)          with the usual caution
//
// Nothing here says a result; that is the verdict's (core/trials/trial_verdict.h). Pure; no failures.
#pragma once

#include "core/trials/trial_standing.h"
#include "core/trials/trial_verdict.h"

namespace steelyard::format {

// "B (neutral)"; the letter alone where the arm has no other name.
[[nodiscard]] QString armTitle(const std::vector<QString>& names, std::size_t arm);
// "93 %"; never quite 0 or 100.
[[nodiscard]] QString chanceText(double chance);
[[nodiscard]] QString trialState(const Trial& trial, const std::vector<QString>& names);
// Of which kind a trial is in a list: one character, black and white safe.
[[nodiscard]] QString trialShape(const Trial& trial);
[[nodiscard]] QString standingWords(const Trial& trial, const TrialStanding& standing,
                                    const std::vector<QString>& names);
// Empty: nothing can still be asked for.
[[nodiscard]] QString missingWords(const TrialStanding& standing);
[[nodiscard]] QString vetoWords(const VetoedArm& veto, const Trial& trial, const std::vector<QString>& names);
[[nodiscard]] QString painCaution();

// One character that repeats the word of a verdict.
[[nodiscard]] QString trialWordShape(TrialWord word);
// Shape, word and number: "◆ Prefer B (neutral) · 97 % likely the best".
[[nodiscard]] QString trialVerdictLine(const TrialVerdict& verdict, const std::vector<QString>& names);

}  // namespace steelyard::format
