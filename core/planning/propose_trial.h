// A trial as it would be set up for a lifter: the order drawn, the sessions on the lifter's days, and where they stand in the plan.
//
//   TrialWish wish{.trial = trial, .from = monday, .today = today};      // a trial without days
//   STEELYARD_TRY(const ProposedTrial proposed, proposeTrial(log, library, wish));
//   proposed.trial.days;   proposed.laid.blocks;                         // what designTrial() stores
//
// Weekdays: those asked for; else those on which the plan ahead has the exercise; else the lifter's usual ones. Days off, easier and
// test weeks of the plan are passed over, because a session there could not be compared. The past of a block is left alone.
// Pure. Failures: Invalid, with a sentence for the coach: the arms are no fair comparison (trials/arm_differences.h), the exercise is in
// a trial already, no weekdays are known, the sessions don't fit (trials/trial_schedule.h), the trial is not sound.
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/base/result.h"
#include "core/planning/trial_in_block.h"

namespace steelyard {

struct TrialWish {
    Trial trial;
    QDate from;  // the first day that may be a session
    QDate today;
    std::vector<int> weekdays = {};  // 1 is Monday
};

struct ProposedTrial {
    Trial trial;
    LaidTrial laid;
    std::vector<int> weekdays;  // that were used
};

[[nodiscard]] Result<ProposedTrial> proposeTrial(const AthleteLog&, const Library&, const TrialWish&);
// On which the plan has the trial's exercise from a day on, else the lifter's usual ones; ascending.
[[nodiscard]] std::vector<int> trialWeekdays(const AthleteLog&, const Library&, const Trial&, QDate from);
// The trial of one of these exercises that runs on that day. Null: none.
[[nodiscard]] const Row<Trial>* runningTrialOf(const AthleteLog&, const Library&, const Trial&, QDate today);

}  // namespace steelyard
