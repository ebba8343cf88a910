#include "core/trials/trial_standing.h"

#include "core/trials/trial_verdict.h"

#include <algorithm>

namespace steelyard {
namespace {

bool isMissed(const TrialRecord& record, std::size_t day)
{
    return std::ranges::any_of(record.deviations, [&](const NotedDeviation& noted) {
        return noted.kind == TrialDeviation::Missed && noted.day == day;
    });
}

void addMissingRatings(const Trial& trial, const TrialObservation& seen, const std::vector<NotedDeviation>& deviations,
                       std::vector<MissingRating>& missing)
{
    const bool clouded = std::ranges::any_of(deviations, [&](const NotedDeviation& noted) {
        return noted.kind == TrialDeviation::Clouded && noted.day == seen.day;
    });
    for (const TrialOutcome& outcome : trial.outcomes) {
        const OutcomeKind* kind = findOutcome(outcome.key);
        if (outcome.weight <= 0 || !kind || kind->scale == OutcomeScale::Repetitions || seen.value(outcome.key))
            continue;
        const bool ofNextDay = outcome.key == u"next_soreness" || outcome.key == u"next_weakness";
        if (!(clouded && ofNextDay)) missing.push_back({seen.day, seen.date, outcome.key});
    }
}

}  // namespace

TrialStanding trialStanding(const Trial& trial, const TrialRecord& record, QDate today)
{
    TrialStanding standing;
    standing.arms.resize(trial.arms.size());
    standing.out = vetoedArms(trial, record);
    standing.wholeBlocks = wholeBlocks(trial, record);
    for (std::size_t day = 0; day < trial.days.size(); ++day) {
        const TrialDay& drawn = trial.days[day];
        const TrialObservation* seen = day < record.observations.size() ? &record.observations[day] : nullptr;
        if (seen && seen->done) {
            ArmStanding& arm = standing.arms[*seen->done];
            ++(drawn.block > 0 ? arm.done : arm.gotUsed);
            if (seen->doneOn && drawn.block > 0) addMissingRatings(trial, *seen, record.deviations, standing.missing);
        } else if (seen && isMissed(record, day)) {
            standing.arms[drawn.arm].missed += drawn.block > 0 ? 1 : 0;
        } else if (!trial.ending) {
            standing.arms[drawn.arm].toCome += drawn.block > 0 ? 1 : 0;
            ++standing.sessionsToCome;
            if (!standing.next) standing.next = drawn;
        }
    }
    standing.finished =
        trial.ending || (!trial.days.empty() && standing.sessionsToCome == 0 && today >= trial.days.back().date);
    return standing;
}

}  // namespace steelyard
