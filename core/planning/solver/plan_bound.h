// How far a plan can be from the best of all: a cost that no plan within the limits goes below.
//
//   const auto bound = boundPlan(problem, {.seconds = 5}, progress);
//   mostAboveBest(answer->cost.total(), *bound)         == 0.04    // at most 4 % above the best; absent: not known
//
// The problem as a mixed integer program, solved by branch and bound with GLPK as far as the time goes. Small ones are solved
// to the end (proven); for a real week the bound stays weak, and then it says little. It ends by a clock, so it is for saying
// how good a plan is, never for making one.
//
// Units: points of cost, seconds. Failures: Invalid, Cancelled, within a tenth of a second.
// Source: GLPK reference manual 5.0, ch. 5 (branch and cut).
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/planning/solver/plan_answer.h"

namespace steelyard {

struct PlanBoundOptions {
    double seconds = 5;
};

struct PlanBound {
    double lowest = 0;                // the best of all costs at least this
    bool proven = false;              // `found` is the best of all
    std::optional<PlanAnswer> found;  // the best plan that was met on the way
};

[[nodiscard]] Result<PlanBound> boundPlan(const PlanProblem&, const PlanBoundOptions&, const Progress&);

// The share that a plan's cost lies above the best of all, at most. Absent where the bound doesn't say.
[[nodiscard]] std::optional<double> mostAboveBest(double cost, const PlanBound&);

}  // namespace steelyard
