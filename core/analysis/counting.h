// From logged sets to what can be compared: counted repetitions and, where effort is known, an estimate of capacity.
//
//   const auto counted = countExposures(record, log.bodyMass, asOf);
//   counted.back().point.countedReps;   // of the best working set
//   counted.back().estimate->lnSystem;  // ln of the load moved, as a one-repetition equivalent
//
// Only Work and Test sets count. Repetitions to failure = counted repetitions + repetitions in reserve; a set that ended in
// a repetition that failed part-way has 0 in reserve. A set carries an estimate when it has a counted repetition, its
// reserve is known and at most 4, and repetitions to failure are at most 30. A session's estimate is its best set's.
//
// The equation is Epley's (1985), without its exception at one repetition, so that a trend has no step there:
// capacity = load x (1 + repetitions / 30). Its logarithm has a nearly constant error (about 0.020 to 0.025 between
// sessions; Mitter et al. 2022, PLOS ONE e0268074), which is why trends are fitted to it. Up to 30 repetitions it serves
// as an index of trend; as a maximum only up to about 12 (Reynolds, Gordon & Robergs 2006, JSCR 20(3):584-592).
//
// What is moved: the external load; on lines with added load, body mass as well; on assisted lines, body mass less the
// load. Body mass is the latest entry up to the day, or else the first one after it. With no entry at all, only sets at the
// load of the latest session are compared, by their repetitions alone, and there is no capacity in kilograms.
//
// Units: kilograms. Failures: none; what isn't known is absent.
#pragma once

#include "core/analysis/line_reading.h"

namespace steelyard {

struct CountingRules {
    // More than this share of the watched repetitions off standard, and the session can't be compared. Our convention.
    double mostOffShare = 1.0 / 3.0;
    // Reported reserve is off by more than two repetitions from about seven on (Hackett et al. 2017, JSCR 31(8):2162-2168).
    double mostReserve = 4;
    double mostRepsToFailure = 30;
    // Reserve taken for sets without effort in an estimate of `Effortless`; as good as any while it stays the same.
    double assumedReserve = 2;
};

struct SetEstimate {
    double lnSystem = 0;      // ln(kilograms moved x (1 + repetitions to failure / 30))
    double bodyPartKg = 0;    // kilograms moved that are not external load: what to take off for capacity
    bool inKilograms = true;  // false: body mass unknown, lnSystem compares repetitions only
    friend bool operator==(const SetEstimate&, const SetEstimate&) = default;

    [[nodiscard]] double externalKg() const;
};

struct CountedExposure {
    ReadingPoint point;
    std::optional<SetEstimate> estimate;    // of the best set whose effort is known
    std::optional<SetEstimate> effortless;  // the same, with an assumed reserve for sets without effort
    std::optional<double> reserve;          // of the first working set with a known one
    int effortSets = 0;                     // working sets whose reserve is known (however large)
    int watchedSets = 0;
    int watchedReps = 0;  // completed in watched working sets
    friend bool operator==(const CountedExposure&, const CountedExposure&) = default;

    int helpedSets = 0;  // watched working sets with more than a third of their repetitions off standard

    // Off-standard share of the watched repetitions; absent when nobody watched.
    [[nodiscard]] std::optional<double> offShare() const;
    // The larger of that and the share of watched sets that were mostly helped: one bad set of three spoils a session as
    // three with a third of bad repetitions do.
    [[nodiscard]] std::optional<double> helpedShare() const;
};

[[nodiscard]] bool isWorkingSet(const SetEntry&);
// Reserve of a set: 0 when a repetition failed, else as reported.
[[nodiscard]] std::optional<double> reserveOf(const SetEntry&);
// The lifter's body mass on a day: as weighed last before, else as weighed first after; absent when never weighed.
[[nodiscard]] std::optional<double> bodyMassKgOn(const std::vector<BodyMassEntry>&, QDate);
// Kilograms of the lifter that the loading adds to (or, for assisted work, lends to) the external load; 0 for a load that
// stands alone; absent when it should be known and isn't.
[[nodiscard]] std::optional<double> bodyPartKg(Loading, const std::vector<BodyMassEntry>&, QDate);
// Kilograms moved by a set: see above. Never under 0.
[[nodiscard]] double systemKg(Loading, double loadKg, double bodyPartKg);

// Every exposure up to `asOf` that has working or deload sets, oldest first.
[[nodiscard]] std::vector<CountedExposure> countExposures(const LineRecord&, const std::vector<BodyMassEntry>&,
                                                          QDate asOf, const CountingRules& = {});

}  // namespace steelyard
