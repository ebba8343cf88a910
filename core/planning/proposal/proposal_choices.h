// What a block can be made of: lifts of the library for this lifter, with what speaks for each and against it.
//
//   const auto choices = proposalChoices(log, library, &gym, wishes);
//   choices[0].lift;   choices[0].progressing;   choices[0].possible
//
// Of each variant that was done lately its newest line, and every line that is progressing; of an exercise that wasn't done, the
// default variant, or the first one that the gym has the equipment for. Hidden exercises and variants are out. So is what
// trains nothing that anybody asked for, unless it was done lately.
//
// What a trial needs or chose stands in, as if it were progressing, and the trial's other arms don't stand beside it; what hurt in a
// trial is out (proposal_trials.h). What is pinned stands whatever a trial says.
//
// Rating: half, for what is unknown; else mostly by how strongly the target was felt, and by how often it gave out first; a
// lift that is new to the lifter is a little behind. Ratings only compare within one lifter.
// Whether the gym has what it is done with: gym_offers.h; done lately means that there is.
//
// Pure; no failures. Library and log outlive the choices.
#pragma once

#include "core/planning/proposal/proposal_record.h"
#include "core/planning/proposal/proposal_trials.h"
#include "core/planning/propose_block.h"

#include <set>

namespace steelyard {

struct ProposalChoice {
    LiftLine lift;
    const Row<Exercise>* exercise = nullptr;
    const Row<Variant>* variant = nullptr;
    LineSummary record = {};
    bool progressing = false;
    std::optional<TrialAdvice> trial = {};  // that asks for it
    bool possible = true;
    double rating = 0.5;             // 0..1
    double continuity = 0;           // 0..1
    std::vector<PlanPin> pins = {};  // by the day's place among the training days
    Slot slot;                       // as it would be planned, for its time; sets don't matter
};

// `weekdays`: the training days, as numbers from 1; `wanted`: muscles that somebody asked for.
[[nodiscard]] std::vector<ProposalChoice> proposalChoices(const AthleteLog&, const Library&, const Gym*,
                                                          const ProposalWishes&, const std::vector<int>& weekdays,
                                                          const std::set<Id<Muscle>>& wanted);

}  // namespace steelyard
