// How often each kind of arm was preferred over the roster: a row a kind with its 90 % interval, and a hollow mark where chance
// alone would put it.
//
//   const PanelsSpec spec = buildTrialWins(rosterWins(ended, TrialFactor::Grip, library), QLocale());
//
// Units: percent of the trials that had such an arm. Empty without any. Pure; no failures.
#pragma once

#include "core/trials/roster_wins.h"
#include "ui/charts/panels_spec.h"

namespace steelyard {

[[nodiscard]] PanelsSpec buildTrialWins(const std::vector<ArmWins>&, const QLocale&);

}  // namespace steelyard
