// How much a lifter's open flags ask for attention, and in what order they are read.
//
//   attentionOf(flags)   // 0 without flags; 121 at most
//
// Concerns weigh 81, 27, 9, 3 and 1 (pain, falling, unreadable, not moving, housekeeping). k points of one concern add
// weight x (1 - 2^-k); a flag is 1 point when low, 1.5 when medium, 2 when high. One flag thus takes at least half its
// concern's weight, which is more than all lesser concerns together can: one lifter with pain comes before any without.
// Our convention.
#pragma once

#include "core/flags/flag_rule.h"

namespace steelyard {

// Unknown rules are housekeeping.
[[nodiscard]] Concern concernOf(const Flag&);
[[nodiscard]] double attentionOf(const std::vector<Flag>& flags);
// By concern, then severity, then rule and line.
void sortWorstFirst(std::vector<Flag>& flags);

}  // namespace steelyard
