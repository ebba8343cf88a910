// The same plan problem with one limit lifted, or with one wish made worth much more than the others.
//
//   const auto relaxed = without(problem, PlanLimit::Minutes);
//   if (relaxed) ...                                             // absent: lifting it changes nothing
//
// Pure; no failures. One more training day moves the numbers of the days after it: `dayOf` says where a day stands then.
#pragma once

#include "core/planning/solver/plan_answer.h"

namespace steelyard {

struct RelaxedPlan {
    PlanProblem problem;
    std::optional<int> newDay;

    [[nodiscard]] int dayOf(int day) const { return newDay && day >= *newDay ? day + 1 : day; }
};

// Absent too for OtherWishes and NoCandidate, which are no limits.
[[nodiscard]] std::optional<RelaxedPlan> without(const PlanProblem&, PlanLimit);
[[nodiscard]] PlanProblem withEmphasis(const PlanProblem&, const UnmetWish&);

}  // namespace steelyard
