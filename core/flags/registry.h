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

}  // namespace steelyard
