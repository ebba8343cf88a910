// Lifts to choose from, each with what it means for the lifter's history: an old line goes on, or a new one begins.
//
//   chooser->choose(title, lineChoices(log, library, liftsToAdd(log, library, {})), false, taken);
#pragma once

#include "core/analysis/athlete_log.h"
#include "ui/widgets/lift_chooser.h"

namespace steelyard {

[[nodiscard]] std::vector<LiftChoice> lineChoices(const AthleteLog&, const Library&, const std::vector<LiftLine>&);

}  // namespace steelyard
