// What a lift line is likely to bring on the days of some weeks ahead, asked often: how likely a number of counted repetitions is,
// and which whole number is reached about as often as is wanted.
//
//   LineOutlook outlook(tracker, tracker.contextAt(record, log, today), today);
//   outlook.at({day, 2.0, 1}, 42.5)->target(0.75)      == {9, 0.73}
//   outlook.at({day, 2.0, 1}, 42.5)->within(0.8)       == {8.1, 12.4}
//
// The same forecast as SetTargets within a week of `asOf`; further on the filter goes through weeks in which nothing is heard
// (capacity_ahead.h), so intervals widen. It differs from SetTargets in one thing that the eye can't see: the error of the
// reported reserve is taken at the mean instead of the median.
// `doubt` is the standard deviation of ln load that is added where a line is judged from another one.
//
// Units: kilograms of external load as logged; counted repetitions. The tracker has started and outlives this. Not for several
// threads at once: weeks ahead are worked out when they are first asked for. Failures: at() is absent where nothing is moved.
#pragma once

#include "core/analysis/set_target.h"

namespace steelyard {

// One planned set at one load.
class SetLikelihood {
public:
    SetLikelihood(SetForecast forecast, double keptReps, double middleReps);

    [[nodiscard]] double chanceOf(int reps) const;  // of at least so many counted repetitions
    [[nodiscard]] RepChance target(
        double wanted) const;  // the whole number whose chance is nearest; 0 where none is near
    [[nodiscard]] RepInterval within(double share) const;

private:
    SetForecast m_forecast;
    double m_keptReps;    // lost at failure for the reserve
    double m_middleReps;  // where to begin to look
};

class LineOutlook {
public:
    LineOutlook(const LineTracker& tracker, const SetContext& context, QDate asOf, double doubt = 0);

    [[nodiscard]] std::optional<SetLikelihood> at(const PlannedSet& planned, double loadKg) const;
    [[nodiscard]] const SetContext& context() const { return m_context; }

private:
    [[nodiscard]] const std::vector<TrackedCase>& casesOn(QDate day) const;

    const LineTracker* m_tracker;
    SetContext m_context;
    QDate m_asOf;
    double m_doubt;
    double m_elasticity;
    std::vector<double> m_weights;
    mutable std::vector<std::vector<TrackedCase>> m_weeks;  // after so many quiet weeks, from one on
};

// A week in which nothing is heard. Filters move by sessions: this one's only set was at least far weaker than anything, which
// says nothing.
void passQuietWeek(RegimeFilter& filter, QDate day);

}  // namespace steelyard
