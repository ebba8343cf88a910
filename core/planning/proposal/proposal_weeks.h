// The solved week as the weeks of a block: ramps of sets and reserve, the deload, dates around days off.
//
//   const ProposalWeeks made = proposalWeeks(problem, answer, wishes);
//   made.weeks;   made.leftOut        // dates of sessions for which there was no other day
//
// Pure; no failures. Rules: propose_block.h.
#pragma once

#include "core/planning/proposal/proposal_problem.h"

namespace steelyard {

struct MovedSession {
    QDate from;
    std::optional<QDate> to;  // absent: left out
};

struct ProposalWeeks {
    std::vector<PlannedWeek> weeks;
    std::vector<MovedSession> moved;
};

[[nodiscard]] ProposalWeeks proposalWeeks(const ProposalProblem&, const PlanAnswer&, const ProposalWishes&);
// A set more (by > 0) or less in each free slot where every limit and band that holds goes on to hold.
[[nodiscard]] std::vector<PlanSlot> withSetsShifted(const PlanProblem&, std::vector<PlanSlot> placed, int by);
// The order of a session: what loads the back and many muscles first.
[[nodiscard]] std::vector<PlanSlot> inSessionOrder(const PlanProblem&, std::vector<PlanSlot> placed);
// Repetitions in reserve in work week `week` of `weeks`.
[[nodiscard]] int reserveOfWeek(int week, int weeks);

}  // namespace steelyard
