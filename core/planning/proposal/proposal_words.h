// The sentences of a proposal: why a lift stands in it, what it takes care of, what could not be met.
//
//   proposalWhy(made, answer, slot, wording)    == "Stays: it is progressing. For Chest, 9 of 8 to 14 sets a week."
//
// Plain words for a coach; numbers and days by the wording.
#pragma once

#include "core/planning/proposal/proposal_weeks.h"

namespace steelyard {

[[nodiscard]] QString proposalWhy(const ProposalProblem&, const PlanAnswer&, const PlanSlot&, const Wording&);
[[nodiscard]] QStringList proposalCautions(const ProposalProblem&, const Wording&);
[[nodiscard]] QStringList proposalUnmet(const ProposalProblem&, const PlanAnswer&, const std::vector<MovedSession>&,
                                        const Wording&);

}  // namespace steelyard
