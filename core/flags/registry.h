// Every rule of the review, in the order in which settings show them. A new rule adds its accessor and one entry in
// registry.cpp.
//
//   for (const FlagRule* rule : flagRules()) ...
//   const FlagRule* rule = findRule(u"stalled");   // null for an id of a newer program
#pragma once

#include "core/flags/flag_rule.h"

#include <span>

namespace steelyard {

[[nodiscard]] std::span<const FlagRule* const> flagRules();
[[nodiscard]] const FlagRule* findRule(QStringView id);
// For people; a rule of a newer program has no title here, and its id says more than nothing.
[[nodiscard]] QString ruleTitle(QStringView id);

}  // namespace steelyard
