// Trials whose truth is known: what the rule says of them, how often it is right.
//
//   const TrialTally tally = simulateTrials({.arms = 2, .blocks = 8, .differenceSds = 1}, 2000, seed);
//   tally.right    // share that ended with "prefer" for the best arm
//
// The last arm is better than the others by the difference, in SDs of one lifter's sessions. Ratings: level 6, SD 1.2, a drift
// over the whole trial, sessions alike from one to the next, rounded and held within 0-10. Weighed: five outcomes that share a
// part of their noise, put together with the default weights as the program does.
//
// The rule looks after every block from the fourth on and stops at the first word that ends a trial.
#pragma once

#include "core/trials/randomisation_test.h"
#include "core/trials/trial_decision.h"

#include <cstdint>

namespace steelyard::testing_support {

struct SimulatedTrial {
    std::size_t arms = 2;
    int blocks = 12;
    double differenceSds = 0;
    double driftSds = 0.5;   // from the first to the last planned session
    double likeness = 0.3;   // correlation of neighbouring sessions
    double firstArmSds = 0;  // added to the first arm alone: one that is plainly worse
    bool weighed = false;    // the answer of five outcomes instead of one rating
    double missedShare = 0;  // sessions without a value
};

struct TrialTally {
    int trials = 0;
    double right = 0;  // "prefer" for the best arm (without a difference: for any of those that share the best place)
    double wrong = 0;  // for another one
    double equal = 0;  // stopped without a clear difference, equal or futile
    double undecided = 0;     // all done
    double meanSessions = 0;  // of all arms
    double coverage = 0;      // of the 90 % interval of last less first arm, all planned sessions done; ratings only
    double answerSds = 0;     // last less first arm of the weighed answer, in SDs of its sessions; weighed only
    double byLot = 0;         // exact randomisation test at 0.05, all planned sessions done; where asked for
};

[[nodiscard]] TrialTally simulateTrials(const SimulatedTrial&, int trials, std::uint64_t seed, bool alsoByLot = false);

}  // namespace steelyard::testing_support
