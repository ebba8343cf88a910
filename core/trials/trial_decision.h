// When a trial has said enough: the rule that the verdict follows and that the promised power is simulated with.
//
//   const TrialRule rule = trialRule(2, 8);                       // arms, planned blocks
//   decideAt(posterior, {0, 1}, 6, rule).kind                     // after six whole blocks
//
// It looks after every whole block from the fourth to the last, and the first look that says "prefer" may end the trial.
// Looking so often gives chance as many chances, so the demand on "prefer" is higher than at a single look; it was set such
// that without any difference the trials that ever say "prefer" are at most one in ten (trial_errors prints the table; the
// guide shows it).
//
// Units: standard deviations of one lifter's sessions where a name says Sds. Pure; no failures.
#pragma once

#include "core/trials/arm_regression.h"

namespace steelyard {

inline constexpr int kFirstLook = 4;  // whole blocks: with fewer a trial says nothing, whatever its numbers

struct TrialRule {
    double prefer = 0.975;  // chance of being best that "prefer" asks for
    double equalWithinSds = 0.4;
    double equal = 0.8;    // chance that no arm is further than that from another, for "no clear difference"
    double futile = 0.05;  // chance of ever saying "prefer" under which going on is pointless
    int plannedBlocks = 6;
};

// The longer a trial may run, the more looks, and the higher the demand. The same for two to four arms; the .cpp says why.
[[nodiscard]] TrialRule trialRule(std::size_t arms, int plannedBlocks);

enum class LookSays { TooEarly, Prefer, Equal, Futile, GoOn, Undecided /* all planned blocks done */ };

struct LookFinding {
    LookSays says = LookSays::TooEarly;
    std::size_t best = 0;       // most likely the best of `among`
    double chanceBest = 0;      // of it
    double chanceToPrefer = 0;  // that the rest of the planned blocks brings "prefer"
    // Further blocks until "prefer", if the difference stays as it looks now; absent when it is more than kMostBlocksAhead.
    std::optional<int> blocksAhead;
};

inline constexpr int kMostBlocksAhead = 24;

// `among`: the arms that are still in, two at least.
[[nodiscard]] LookFinding decideAt(const ArmPosterior&, std::span<const std::size_t> among, int wholeBlocks,
                                   const TrialRule&);

}  // namespace steelyard
