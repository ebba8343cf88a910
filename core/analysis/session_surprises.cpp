#include "core/analysis/session_surprises.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr std::size_t kSettlingSessions = 4;

const RegimeFilter& likeliestFilter(const LineTracker& tracker)
{
    const auto weights = tracker.caseWeights();
    const auto best = static_cast<std::size_t>(std::ranges::max_element(weights) - weights.begin());
    return tracker.cases()[best].filter;
}

}  // namespace

std::optional<SessionSurprise> surpriseOf(const LineTracker& before, const Exposure& exposure,
                                          const HeardSession& heard)
{
    if (heard.exposure < kSettlingSessions || !before.started()) return std::nullopt;
    for (std::size_t i = 0; i < heard.observations.size(); ++i) {
        const RegimeObservation& said = heard.observations[i];
        const SetEntry& set = exposure.sets[heard.sets[i]].set;
        if (said.kind != ObservationKind::Exact || !isWorkingSet(set)) continue;
        const PredictedComponent expected =
            likeliestFilter(before).expect(static_cast<double>(exposure.date.toJulianDay()), said);
        return SessionSurprise{exposure.date,
                               set.load,
                               set.reps,
                               repsOfZ(said.z) - repsOfZ(expected.mean),
                               (said.z - expected.mean) / expected.sd,
                               set.watched()};
    }
    return std::nullopt;
}

}  // namespace steelyard
