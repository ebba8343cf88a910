#include "core/analysis/capacity_ahead.h"

#include "core/analysis/line_numbers.h"
#include "core/analysis/line_outlook.h"

#include <cmath>

namespace steelyard {
std::vector<CapacityAhead> capacityAhead(const LineTracker& tracker, const SetContext& context, const Forecast& next,
                                         QDate asOf)
{
    const double lnLoad =
        std::log(systemKg(context.loading, next.load.kilograms(), context.bodyKg)) - tracker.lnReference();
    const double toFailure = next.repsMedian + reserveReps(next.repsInReserve);
    const RegimeObservation set{lnLoad, 0, zError(toFailure, reserveSd(next.repsInReserve)), ObservationKind::Exact,
                                fatigueOfSet(1)};
    const double elasticity = elasticityOf(tracker);
    // Nothing is heard on the way, so the weights of the cases stay.
    const auto weights = tracker.caseWeights();
    std::vector<TrackedCase> cases = tracker.cases();
    std::vector<CapacityAhead> ahead;
    for (int week = 0; week <= kWeeksAhead; ++week) {
        const QDate day = asOf.addDays(7 * week);
        if (week > 0)
            for (TrackedCase& one : cases) passQuietWeek(one.filter, day);
        const SetForecast forecast = forecastOfCases(cases, weights, day, set, 0, tracker.parameters().filter.tail);
        const auto kg = [&](double share) {
            const double ln = lnLoad + (forecast.quantile(share) - zOfReps(1)) / elasticity;
            return std::exp(tracker.lnReference() + ln) - context.bodyKg;
        };
        ahead.push_back({day, kg(0.5), kg(0.25), kg(0.75), kg(0.1), kg(0.9), kg(0.025), kg(0.975)});
    }
    return ahead;
}

}  // namespace steelyard
