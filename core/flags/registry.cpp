#include "core/flags/registry.h"

#include <algorithm>
#include <array>

namespace steelyard {

// Each is defined at the foot of rules/<name>.cpp.
const FlagRule& jointDiscomfortRule();
const FlagRule& wholeLifterDropRule();
const FlagRule& slippingRule();
const FlagRule& mixedRecordRule();
const FlagRule& unsupportedJumpRule();
const FlagRule& lineSwitchingRule();
const FlagRule& stalledRule();
const FlagRule& missedSessionsRule();
const FlagRule& implausibleEntryRule();
const FlagRule& effortUnknownRule();
const FlagRule& unwatchedRule();
const FlagRule& filmCheckRule();
const FlagRule& wrongLimiterRule();
const FlagRule& repBandMisfitRule();
const FlagRule& weakStimulusRule();
const FlagRule& effortLowRule();
const FlagRule& spilloverFatigueRule();
const FlagRule& deloadDueRule();
const FlagRule& setsOutOfBandRule();
const FlagRule& leanBeyondBalanceRule();

std::span<const FlagRule* const> flagRules()
{
    static const std::array<const FlagRule*, 20> rules{
        &jointDiscomfortRule(),  &wholeLifterDropRule(), &slippingRule(),      &mixedRecordRule(),
        &unsupportedJumpRule(),  &lineSwitchingRule(),   &stalledRule(),       &missedSessionsRule(),
        &implausibleEntryRule(), &effortUnknownRule(),   &unwatchedRule(),     &filmCheckRule(),
        &wrongLimiterRule(),     &repBandMisfitRule(),   &weakStimulusRule(),  &effortLowRule(),
        &spilloverFatigueRule(), &deloadDueRule(),       &setsOutOfBandRule(), &leanBeyondBalanceRule(),
    };
    return rules;
}

const FlagRule* findRule(QStringView id)
{
    const auto rules = flagRules();
    const auto found = std::ranges::find_if(rules, [&](const FlagRule* rule) { return rule->id() == id; });
    return found == rules.end() ? nullptr : *found;
}

QString ruleTitle(QStringView id)
{
    const FlagRule* rule = findRule(id);
    return rule ? rule->title() : id.toString();
}

}  // namespace steelyard
