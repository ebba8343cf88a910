// How often each kind of arm won over the roster's ended trials: "neutral grips were preferred in 5 of 9 trials that had one".
//
//   for (const ArmWins& wins : rosterWins(ended, TrialFactor::Grip, library)) ...
//
// A kind is what the factor tells arms apart by: a grip's orientation, an implement, a position, a path, a variant's name, a
// rep band, seconds of lowering. A trial counts once for each kind among its arms; kinds that two arms of a trial share are left
// out of that trial. The interval is that of a Beta with a uniform prior; with few trials it is wide, and says so. What one
// lifter prefers doesn't bind the next: this is for ideas what to try, not for verdicts.
//
// Units: trials; shares 0-1. Pure; no failures.
#pragma once

#include "core/trials/arm_shares.h"
#include "core/trials/earlier_trials.h"

namespace steelyard {

struct ArmWins {
    QString kind;         // machine word of the kind
    QString name;         // for people
    int trials = 0;       // that had such an arm and ended with a word about the arms
    int won = 0;          // preferred it
    int lost = 0;         // preferred another
    int out = 0;          // for discomfort
    ShareInterval share;  // of won among trials, 90 %
    double byChance =
        0;  // of these trials, won if every arm were as likely and each trial preferred one as often as it did
};

// Of ended trials of that factor, most trials first.
[[nodiscard]] std::vector<ArmWins> rosterWins(const std::vector<JudgedTrial>&, TrialFactor, const Library&);

}  // namespace steelyard
