// What a lifter did before on the line of a slot, as planning compares it: working sets and counted repetitions alone.
//
//   const LineRecord* line = lineOf(log, slot);                        // null: never done
//   const auto before = comparableBefore(*line, date);
//   workingLoad(doneSets(before.back()))                               == 42.5 kg
//
// Pure; no failures.
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/planning/progression_rule.h"

namespace steelyard {

[[nodiscard]] const LineRecord* lineOf(const AthleteLog& log, const Slot& slot);
// The exposures of a line before a day that have counted working sets, oldest first, reduced to these sets.
[[nodiscard]] std::vector<Exposure> comparableBefore(const LineRecord& line, QDate date);
[[nodiscard]] DoneExposure doneSets(const Exposure& exposure);

}  // namespace steelyard
