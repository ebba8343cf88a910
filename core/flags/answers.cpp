#include "core/flags/answers.h"

#include "core/flags/registry.h"

#include <algorithm>

namespace steelyard {
namespace {

bool happenedSince(const Flag& flag, QDate answered)
{
    const FlagRule* rule = findRule(flag.rule);
    return rule && rule->isAboutEvents()
           && std::ranges::any_of(flag.evidence, [&](const Evidence& row) { return row.date > answered; });
}

bool gotWorse(const Flag& flag, const Decision& answer)
{
    if (answer.severity && flag.severity > *answer.severity) return true;
    return flag.measure && answer.measure && flag.measure->value >= *answer.measure + flag.measure->step;
}

bool stillHolds(const Decision& decision, const Flag& flag, QDate asOf)
{
    switch (decision.kind) {
    case DecisionKind::Watch:
        return asOf < decision.until.value_or(decision.madeOn.addDays(7 * kActedWeeks));
    case DecisionKind::Dismiss:
        if (happenedSince(flag, decision.madeOn)) return false;
        if (gotWorse(flag, decision)) return false;
        if (decision.severity) return true;
        return asOf < decision.madeOn.addDays(7 * kDismissedWeeks);
    case DecisionKind::Act:
        return asOf < decision.madeOn.addDays(7 * kActedWeeks) && !happenedSince(flag, decision.madeOn);
    }
    return false;
}

}  // namespace

const Decision* newestAnswer(const Flag& flag, const std::vector<Row<Decision>>& decisions, QDate asOf)
{
    const Decision* newest = nullptr;
    for (const Row<Decision>& row : decisions) {
        const Decision& decision = row.value;
        if (decision.rule != flag.rule || decision.line != flag.line || decision.madeOn > asOf) continue;
        if (!newest || decision.madeOn >= newest->madeOn) newest = &decision;
    }
    return newest;
}

const Decision* answerTo(const Flag& flag, const std::vector<Row<Decision>>& decisions, QDate asOf)
{
    const Decision* newest = newestAnswer(flag, decisions, asOf);
    return newest && stillHolds(*newest, flag, asOf) ? newest : nullptr;
}

std::optional<QDate> lastLookedAt(const std::vector<Row<Decision>>& decisions, QDate asOf)
{
    std::optional<QDate> last;
    for (const Row<Decision>& row : decisions)
        if (row.value.madeOn <= asOf && (!last || row.value.madeOn > *last)) last = row.value.madeOn;
    return last;
}

bool isFinished(const std::vector<Flag>& open, const std::vector<Row<Decision>>& decisions, QDate asOf)
{
    std::optional<QDate> finished;
    for (const Row<Decision>& row : decisions) {
        const Decision& decision = row.value;
        if (decision.madeOn > asOf || decision.madeOn <= asOf.addDays(-kRoundDays)) continue;
        if (decision.rule != kLookedAtRule && !open.empty()) continue;
        finished = std::max(finished.value_or(decision.madeOn), decision.madeOn);
    }
    return finished && std::ranges::none_of(open, [&](const Flag& flag) { return happenedSince(flag, *finished); });
}

}  // namespace steelyard
