// How long a planned day takes: its sets with their repetitions and rests, and setting up each lift.
//
//   minutesOf(day, library)        3 sets of 8-12 with 120 s of rest: 3 x (10 x 3 s) + 2 x 120 s + 120 s = 7.5 min
//
// The numbers are common practice without one source; only what the plan itself says (sets, band, rest) is the coach's. A set is taken
// in the middle of its band; a lift done one side at a time takes its repetitions twice. After the last set of a lift nobody rests
// for it: what follows is set up meanwhile. In a superset the lifts are done in turns: a round is every lift's set, then the longest of their rests.
// Warm-up sets are part of setting up.
//
// Units: minutes and seconds. Pure; no failures. A variant that the library lacks counts as two-sided.
#pragma once

#include "core/domain/block.h"

namespace steelyard {

inline constexpr int kRepSeconds = 3;      // lifting and lowering
inline constexpr int kSetUpSeconds = 120;  // finding the place, loading, warming up
inline constexpr int kTurnSeconds = 15;    // from one lift of a superset to the next

// Where the slot says nothing: heavy sets need longer.
struct UsualRest {
    int bandHighUpTo;  // repetitions
    int seconds;
};
inline constexpr std::array<UsualRest, 4> kUsualRests{{{5, 180}, {8, 150}, {15, 120}, {1000, 90}}};

[[nodiscard]] int restSecondsOf(const Slot&);
[[nodiscard]] double setSecondsOf(const Slot&, const Library&);
[[nodiscard]] double minutesOf(const PlannedDay&, const Library&);

}  // namespace steelyard
