// How many repetitions a set to come will bring, and which load brings a number of repetitions: a distribution, not a number.
//
//   const SetForecast forecast = forecastSet(tracker, day, lnLoad, 1);
//   forecast.reps(0.5);              // median repetitions to failure
//   forecast.probabilityOver(10);    // of reaching ten
//
// The distribution is a mixture over what may be going on, how noisy the lifter is and whether the day is off. It is
// recalibrated: on simulated lifters, stated shares came true within two points (the tables are in the guide).
//
// Units: repetitions to failure (what a set stopped with so many in reserve would have reached), ln load over the tracker's
// reference. Failures: none; the tracker has started.
#pragma once

#include "core/analysis/line_tracker.h"

namespace steelyard {

class SetForecast {
public:
    SetForecast(const std::vector<PredictedComponent>& components, double tail);

    // Of z = ln(1 + repetitions / 30), recalibrated.
    [[nodiscard]] double cdf(double z) const;
    [[nodiscard]] double quantile(double probability) const;
    // Repetitions to failure below which a share of such sets stays; never under 0.
    [[nodiscard]] double reps(double probability) const;
    // That at least so many whole repetitions to failure are reached.
    [[nodiscard]] double probabilityOver(double reps) const;
    // Before recalibration, as the model states it.
    [[nodiscard]] double rawCdf(double z) const;
    [[nodiscard]] double nearby(double probability, double& sd) const;

private:
    std::vector<PredictedComponent> m_components;
    double m_tail = 3.5;
};

// For set `number` of a session on that day; `repError`: error of z that such a set will be written down with.
[[nodiscard]] SetForecast forecastSet(const LineTracker&, QDate day, double lnLoad, int number, double repError = 0);

// The same of filters that stand for a tracker's cases with these weights; `shift` is added to z (a weekday's habit).
[[nodiscard]] SetForecast forecastOfCases(std::span<const TrackedCase> cases, std::span<const double> weights,
                                          QDate day, const RegimeObservation& set, double shift, double tail);

// Repetitions lost at failure for what is kept in reserve: a set stopped with `rir` reported in reserve reaches so many
// fewer than to failure (set_evidence.h).
[[nodiscard]] double reserveReps(double rir);

}  // namespace steelyard
