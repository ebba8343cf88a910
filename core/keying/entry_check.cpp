#include "core/keying/entry_check.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

// Capacity as the load for one repetition, by Epley's equation (1985); only ever compared with itself.
double oneRepetition(const SetEntry& set)
{
    return set.load.kilograms() * (1 + set.countedReps() / 30.0);
}

bool comparesByLoad(Loading loading)
{
    return loading == Loading::BarTotal || loading == Loading::PerHand || loading == Loading::Stack;
}

std::optional<double> bestOfLast(const LineRecord& record, QDate date, std::size_t sessions)
{
    double best = 0;
    std::size_t seen = 0;
    for (auto at = record.exposures.rbegin(); at != record.exposures.rend() && seen < sessions; ++at) {
        if (at->date >= date) continue;
        ++seen;
        for (const LoggedSet& logged : at->sets)
            if (isWorkingSet(logged.set)) best = std::max(best, oneRepetition(logged.set));
    }
    return best > 0 ? std::optional(best) : std::nullopt;
}

EntryQuestion askBy(const EntryDoubt& doubt, bool repsKnown)
{
    return {EntryTrouble::Unusual, doubt.slip, doubt.fitting, doubt.usualKg,
            repsKnown ? std::optional(doubt.usualReps) : std::nullopt};
}

std::optional<EntryQuestion> besideRecord(const SetEntry& set, const UsualEntry& usual, const EntryBackground& about,
                                          const EntryLimits& limits)
{
    if (const auto doubt = doubtBeside(usual, set, about.date, limits.usual)) return askBy(*doubt, true);
    if (!comparesByLoad(about.loading)) return std::nullopt;
    const auto best = bestOfLast(*about.record, about.date, limits.jumpSessions);
    if (!best || oneRepetition(set) <= limits.jump * *best) return std::nullopt;
    return EntryQuestion{EntryTrouble::Jump, EntrySlip::Unclear, std::nullopt, std::exp(usual.lnLoad), usual.reps};
}

std::optional<EntryQuestion> besidePlan(const SetEntry& set, const EntryBackground& about, const EntryLimits& limits)
{
    if (!about.planned || about.planned->mass() <= Mass{} || !comparesByLoad(about.loading)) return std::nullopt;
    const UsualEntry usual{std::log(about.planned->kilograms()), 0, static_cast<double>(set.reps)};
    DoubtLimits besides = limits.usual;
    besides.ratio = limits.besidePlan;
    const auto doubt = doubtBeside(usual, set, about.date, besides);
    return doubt ? std::optional(askBy(*doubt, false)) : std::nullopt;
}

double mostFor(Loading loading, const EntryLimits& limits)
{
    switch (loading) {
    case Loading::BarTotal:
    case Loading::Stack:
        return limits.mostKg;
    case Loading::PerHand:
        return limits.mostPerHandKg;
    case Loading::Added:
    case Loading::Assisted:
        return limits.mostAddedKg;
    }
    return limits.mostKg;
}

}  // namespace

std::optional<EntryQuestion> questionAbout(const SetEntry& set, const EntryBackground& about, const EntryLimits& limits)
{
    if (set.kind != SetKind::WarmUp) {
        const auto usual = about.record ? usualAround(*about.record, about.date) : std::nullopt;
        const auto question = usual ? besideRecord(set, *usual, about, limits) : besidePlan(set, about, limits);
        if (question) return question;
    }
    if (set.load.kilograms() > mostFor(about.loading, limits)) return EntryQuestion{.trouble = EntryTrouble::TooHeavy};
    if (set.reps > limits.mostReps) return EntryQuestion{.trouble = EntryTrouble::TooMany};
    return std::nullopt;
}

}  // namespace steelyard
