// Every rule whose numbers the coach may set, in the order and the groups in which settings show them.
//
//   for (const RuleEntry& entry : adjustableRules()) … entry.group, entry.title, entry.rule->parameters()
//
// Flags and ways to progress come from their registries, so a new one of either needs no line here.
#pragma once

#include "core/domain/adjustable_rule.h"

namespace steelyard {

struct RuleEntry {
    QString group;        // for people
    QString title;        // two to four words
    QString explanation;  // a sentence or two
    const AdjustableRule* rule;
};

[[nodiscard]] std::vector<RuleEntry> adjustableRules();

}  // namespace steelyard
