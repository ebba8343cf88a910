// What a lifter's trials say to whoever proposes a block: what a running one needs, what an ended one chose, and what hurt in it.
//
//   for (const TrialAdvice& advice : trialAdvice(log, library, today)) ...
//
// A running trial keeps its exercise in the plan, as its first arm; its sessions are then laid over it (trial_in_block.h). Of the
// trials of an exercise that have ended, the newest with a choice is the one that counts. Of a trial that ended for
// discomfort the arms that are out (trials/discomfort_veto.h) are avoided; where none is (the coach was quicker), the one with the
// highest rating. A lift that was chosen later is not avoided any more. Pure; no failures.
#pragma once

#include "core/analysis/athlete_log.h"

namespace steelyard {

enum class TrialSay { UnderTrial, Chosen, Avoided };

struct TrialAdvice {
    TrialSay say = TrialSay::UnderTrial;
    LiftLine lift;
    const Trial* trial = nullptr;  // in the log
};

[[nodiscard]] std::vector<TrialAdvice> trialAdvice(const AthleteLog&, const Library&, QDate today);

}  // namespace steelyard
