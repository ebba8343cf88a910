// Every way to progress, in the order in which they are offered. A new rule adds its accessor and one entry in
// progression_registry.cpp.
//
//   for (const ProgressionRule* rule : progressionRules()) ...
//   progressionFor(slot.progression).title()
#pragma once

#include "core/planning/progression_rule.h"

#include <span>

namespace steelyard {

[[nodiscard]] std::span<const ProgressionRule* const> progressionRules();
[[nodiscard]] const ProgressionRule* findProgression(QStringView id);  // null for an id of a newer program
// The rule of a slot; the first one where the slot names none, or one that isn't known here.
[[nodiscard]] const ProgressionRule& progressionFor(QStringView id);

}  // namespace steelyard
