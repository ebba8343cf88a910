#include "core/analysis/session_surprises.h"

namespace steelyard {
namespace {

constexpr std::size_t kSettlingSessions = 4;

}  // namespace

std::optional<SessionSurprise> surpriseOf(const LineTracker& before, const Exposure& exposure,
                                          const HeardSession& heard)
{
    if (heard.exposure < kSettlingSessions || !before.started()) return std::nullopt;
    for (std::size_t i = 0; i < heard.observations.size(); ++i) {
        const RegimeObservation& said = heard.observations[i];
        const SetEntry& set = exposure.sets[heard.sets[i]].set;
        if (said.kind != ObservationKind::Exact || !isWorkingSet(set)) continue;
        PredictedComponent expected =
            before.likeliest().filter.expect(static_cast<double>(exposure.date.toJulianDay()), said);
        expected.mean += heard.weekdayEffect;
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
