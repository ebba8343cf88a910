// What a planned set will bring, as counted repetitions when it is stopped with a reserve: how many to expect, how likely each
// number is, which whole number to aim for, and which load brings a wanted number.
//
//   const SetTargets targets(tracker, tracker.contextAt(record, log, day), {day, 2.0, 1});
//   targets.at(42.5)->targetReps;      // reached about three times in four
//   targets.loadFor(10);               // kg at which ten are reached just so often
//
// A set stopped with `rir` in reserve reaches reserveReps(rir) fewer than to failure, and how many exactly depends on how well
// the lifter judges that reserve: reserveSd(rir) is part of every interval. Repetitions are counted whole, so "at least r" is
// what lies above r - 0.5 on the continuous scale; the calibration of set_forecast.h was measured so.
//
// The target is the whole number whose chance is nearest kTargetChance; 0 where not even one is likely. The largest number
// with at least that chance would be reached far more often than that (82 instead of 74 of 100 on simulated lifters).
//
// Units: kilograms of external load as it is logged; for Assisted, of help. Pure. The tracker has started and outlives this.
// Failures: at() is absent where nothing would be moved.
#pragma once

#include "core/analysis/set_forecast.h"

namespace steelyard {

inline constexpr double kTargetChance = 0.75;
// Further from failure a load says nothing about strength. Convention.
inline constexpr double kMostPlannedReps = 80;

struct PlannedSet {
    QDate day;
    double rir = 2;  // planned reserve, from 0
    int number = 1;  // place among the working sets of its session
};

struct RepInterval {
    double low = 0;
    double high = 0;
    friend bool operator==(const RepInterval&, const RepInterval&) = default;
};

struct RepChance {
    int reps = 1;
    double probability = 0;  // of at least so many
    friend bool operator==(const RepChance&, const RepChance&) = default;
};

struct SetTarget {
    double loadKg = 0;
    double repsMedian = 0;
    RepInterval within50;
    RepInterval within80;
    RepInterval within95;
    int targetReps = 0;
    double targetProbability = 1;
    std::vector<RepChance> chances;  // from one repetition to the last that isn't all but out of the question
    friend bool operator==(const SetTarget&, const SetTarget&) = default;

    // That at least so many are reached: as listed, 1 below the list and 0 beyond it.
    [[nodiscard]] double chanceOf(int reps) const;
};

class SetTargets {
public:
    SetTargets(const LineTracker& tracker, const SetContext& context, PlannedSet planned);

    [[nodiscard]] std::optional<SetTarget> at(double loadKg) const;
    // The load at which `reps` is reached with exactly kTargetChance; where no load is light (or heavy) enough, the
    // lightest (heaviest) there is: nothing hung on, no help.
    [[nodiscard]] double loadFor(int reps) const;
    // Of several loads the one whose target is nearest to `reps`, and of these the one whose chance is nearest. Absent when
    // nothing would be moved by any of them.
    [[nodiscard]] std::optional<SetTarget> nearest(std::span<const double> loadsKg, int reps) const;

private:
    [[nodiscard]] SetForecast forecastOf(double movedKg) const;
    [[nodiscard]] double chanceAt(double movedKg, int reps) const;

    const LineTracker* m_tracker;
    SetContext m_context;
    PlannedSet m_planned;
};

// How far apart sets stopped with that reported reserve end, in repetitions: the error of hearSet() (set_evidence.h).
[[nodiscard]] double reserveSd(double rir);
// The forecast of set `number` with the error in it that a set stopped with that reserve will be written down with.
[[nodiscard]] SetForecast forecastStopped(const LineTracker&, QDate day, double lnLoad, int number, double rir);

}  // namespace steelyard
