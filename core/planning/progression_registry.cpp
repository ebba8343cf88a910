#include "core/planning/progression_registry.h"

#include <algorithm>
#include <array>

namespace steelyard {

// Each is defined at the foot of progressions/<name>.cpp.
const ProgressionRule& bandThenLoadRule();
const ProgressionRule& loadByStepRule();
const ProgressionRule& effortRampRule();
const ProgressionRule& holdRule();

std::span<const ProgressionRule* const> progressionRules()
{
    static const std::array<const ProgressionRule*, 4> rules{&bandThenLoadRule(), &loadByStepRule(), &effortRampRule(),
                                                             &holdRule()};
    return rules;
}

const ProgressionRule* findProgression(QStringView id)
{
    const auto rules = progressionRules();
    const auto found = std::ranges::find_if(rules, [&](const ProgressionRule* rule) { return rule->id() == id; });
    return found == rules.end() ? nullptr : *found;
}

const ProgressionRule& progressionFor(QStringView id)
{
    const ProgressionRule* rule = findProgression(id);
    return rule ? *rule : *progressionRules().front();
}

}  // namespace steelyard
