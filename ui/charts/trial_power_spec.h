// What a planned trial can find: the chance that it ends with the right word, against how large the difference is, for the
// planned number of blocks and for fewer and more beside it.
//
//   const PanelsSpec spec = buildTrialPower({.arms = 2, .blocks = 6}, QLocale());
//   powerSentence({.arms = 2, .blocks = 6})      "Finds a difference of 1 SD (about 1.2 points of 10) in 5 of 10 such trials."
//
// Units: standard deviations of one lifter's sessions; trials of 10. Pure; no failures.
#pragma once

#include "core/trials/trial_power.h"
#include "ui/charts/panels_spec.h"

namespace steelyard {

[[nodiscard]] PanelsSpec buildTrialPower(const TrialDesign&, const QLocale&);
[[nodiscard]] QString powerSentence(const TrialDesign&);

}  // namespace steelyard
