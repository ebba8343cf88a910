// What a set says about strength: repetitions to failure with their error, or a bound.
//
//   const auto heard = hearSet(set, context);
//   for (const RegimeObservation& one : heard.observations()) ...
//
// Repetitions to failure, their SD in repetitions, and what the set can say:
//   failed part-way, or nothing in reserve          reps + 0.5               0.45             exactly
//   0.5 to 4.5 in reserve                           reps + 0.45 + 1.1 RIR    0.45 + 0.25 RIR  exactly
//   5 or more in reserve                            reps + 3                 1.0              at least
//   a deload set                                    reps + 1.5               1.0              at least
//   reserve unknown, below the top of the band      reps + 0.45 + 1.1 usual  1.6              exactly, but weakly
//   reserve unknown, at or above it                 reps + 0.5               0.8              at least
// Reserve is under-reported by about a tenth, and less exact the larger it is (Refalo et al. 2023; Halperin et al. 2022,
// Sports Med 52:377-390; Hackett et al. 2017, JSCR 31(8):2162-2168); half a repetition is lost in counting whole ones.
// Sets with repetitions off the standard: all repetitions together say "at most", because help made them possible; the
// counted ones say "at least". A set mostly to standard (a third off or less) still says both.
//
// Units: kilograms inside; z = ln(1 + repetitions to failure / 30). Nothing is said by warm-ups and by sets without load.
#pragma once

#include "core/analysis/counting.h"
#include "core/numerics/regime_filter.h"

#include <array>

namespace steelyard {

// Where body mass counts and nobody wrote it down, a change of load is read against this; only kilograms of capacity can't
// be said then. Our convention: 10 kg more or less turn a step of 2.5 kg into 2.8 or 3.8 % instead of 3.3 %.
inline constexpr double kAssumedBodyKg = 75;

struct SetContext {
    Loading loading = Loading::BarTotal;
    double bodyKg = 0;          // see bodyPartKg(); kAssumedBodyKg where it isn't known
    double lnReference = 0;     // ln of the kilograms moved that loads are measured against
    int bandHigh = 12;          // top of the planned band of repetitions
    double usualReserve = 1.5;  // of this lifter on this line
};

struct HeardSet {
    std::array<RegimeObservation, 2> said{};
    std::size_t count = 0;     // 0, 1 or 2
    double repsToFailure = 0;  // of the first one
    friend bool operator==(const HeardSet&, const HeardSet&) = default;

    [[nodiscard]] std::span<const RegimeObservation> observations() const { return {said.data(), count}; }
};

// `number` is the set's place among the working sets of its session, from 1.
[[nodiscard]] HeardSet hearSet(const SetEntry&, int number, const SetContext&);
// ln of the kilograms moved; absent for no load.
[[nodiscard]] std::optional<double> lnMoved(const SetEntry&, const SetContext&);
// z of so many repetitions to failure, and back.
[[nodiscard]] double zOfReps(double repsToFailure);
[[nodiscard]] double repsOfZ(double z);
// Error of z for an error in repetitions.
[[nodiscard]] double zError(double repsToFailure, double repsSd);

// Off-standard repetitions of a set: what was written down, or at least as many as carry the commonest mark.
[[nodiscard]] int offReps(const SetEntry&);
// More than a third of the repetitions off standard.
[[nodiscard]] bool mostlyHelped(const SetEntry&);

}  // namespace steelyard
