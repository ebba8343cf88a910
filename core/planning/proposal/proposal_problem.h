// A lifter's week as a plan problem, and what its numbers stand for.
//
//   const ProposalProblem made = proposalProblem(log, library, &gym, wishes);
//   made.problem.candidates[i]    is made.choices[i];   made.problem.muscles[m] is made.muscles[m], made.joints[j] likewise
//
// Bands: an aim weighs 1; what the record shows without an aim is kept between three and five quarters, weighing half; where
// there is neither aim nor record, some sets for each of the larger muscle groups, weighing half. Our conventions.
// Joints: rated lately in an exercise. High: the exercise is spared. Noticeable: its sets cost, the more the higher it was
// (zones: analysis/discomfort_zones.h).
// Minutes: planning/session_time.h, a little on the long side.
#pragma once

#include "core/planning/block_totals.h"
#include "core/planning/proposal/proposal_choices.h"

namespace steelyard {

struct ProposalProblem {
    PlanProblem problem;
    std::vector<ProposalChoice> choices;
    std::vector<Row<Muscle>> muscles;
    std::vector<JointComplaint> joints;   // of planning/block_totals.h
    std::vector<QString> jointExercises;  // what they were rated in
    std::vector<TrialAdvice> trials;      // what trials say; into the log
    std::vector<QString> trialLifts;      // the names of their lifts
};

[[nodiscard]] std::vector<int> trainingWeekdays(const AthleteLog&, const ProposalWishes&);
[[nodiscard]] ProposalProblem proposalProblem(const AthleteLog&, const Library&, const Gym*, const ProposalWishes&);

}  // namespace steelyard
