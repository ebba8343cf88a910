#include "ui/shell/adjustable_rules.h"

#include "core/flags/registry.h"
#include "core/planning/progression_registry.h"
#include "core/planning/slot_load.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct AdjustableRulesText {
    Q_DECLARE_TR_FUNCTIONS(AdjustableRulesText)
};

}  // namespace

std::vector<RuleEntry> adjustableRules()
{
    std::vector<RuleEntry> all;
    for (const FlagRule* rule : flagRules())
        all.push_back({AdjustableRulesText::tr("What is flagged"), rule->title(), rule->explanation(), rule});
    const QString loads = AdjustableRulesText::tr("How loads go on");
    all.push_back({loads, AdjustableRulesText::tr("How sure a target is"),
                   AdjustableRulesText::tr("Loads and repetitions of the coming weeks are chosen so that a set reaches "
                                           "its target about this often. Higher asks for less and is reached more "
                                           "often."),
                   &slotLoadNumbers()});
    for (const ProgressionRule* rule : progressionRules())
        all.push_back({loads, rule->title(), rule->description(), rule});
    return all;
}

}  // namespace steelyard
