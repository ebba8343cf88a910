// A plan with what stands in the way of each wish that it leaves open. Found by lifting one limit and asking again, not guessed.
//
//   const auto answer = solvePlan(problem, {.steps = 1'000'000}, progress);
//   answer->unmet[0].inTheWay                    // {Minutes, missingWithout 0}: with time enough the wish is met
//
// A limit stands in the way when without it at least half of what is missing can be had, and the whole plan gains by at least
// half of what that is worth: a plan that only trades one wish for another tells nothing of the limit. OtherWishes: within
// all limits the wish could be met so far, were it worth much more than the others. NoCandidate: nothing to choose from
// serves it. Nothing in the way: no one limit alone; several have to give.
// Each question is a search of its own (plan_search.h), which may miss what is hard to find: an obstacle that is named is one,
// one that isn't named may be. A plan that costs less, found on the way, becomes the answer.
//
// Failures: as of searchPlan().
#pragma once

#include "core/planning/solver/plan_search.h"

namespace steelyard {

struct PlanSolveOptions {
    std::int64_t steps = 2'000'000;
    std::int64_t stepsALimit = 100'000;
    std::uint64_t seed = 1;
};

[[nodiscard]] Result<PlanAnswer> solvePlan(const PlanProblem&, const PlanSolveOptions&, const Progress&);
// The second half of it, for a plan that is there already.
[[nodiscard]] Result<PlanAnswer> withObstacles(const PlanProblem&, const PlanAnswer&, const PlanSolveOptions&,
                                               const Progress&);

}  // namespace steelyard
