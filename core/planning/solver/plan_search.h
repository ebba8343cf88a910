// Looks for the plan that costs least: annealing in rounds, each from the best plan or from nothing, over plans that keep
// every limit.
//
//   const auto answer = searchPlan(problem, {.steps = 1'000'000, .seed = 1}, progress);
//   answer->cost.total();   answer->placed;
//
// The same problem, steps and seed give the same plan, on every machine and however busy it is: the search ends by steps,
// never by a clock. `better`, when there is one, hears every better plan at the end of a round, the first one after a small
// part of the steps; what it last heard stands when the search is stopped. How far the answer is from the best of all isn't
// known here; plan_bound.h says what can be said.
//
// Failures: Invalid with what validate() found first; Cancelled, within a few milliseconds.
// Source: Kirkpatrick, Gelatt, Vecchi 1983, Science 220:671-680 (annealing); the moves and rounds are ours.
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/planning/solver/plan_answer.h"

#include <cstdint>
#include <functional>
#include <span>

namespace steelyard {

struct PlanSearchOptions {
    std::int64_t steps = 4'000'000;  // about a second
    std::uint64_t seed = 1;
    std::vector<PlanSlot> start = {};  // a plan to better; what of it the limits don't allow is left out
};

using PlanHeard = std::function<void(const PlanAnswer&)>;

[[nodiscard]] Result<PlanAnswer> searchPlan(const PlanProblem&, const PlanSearchOptions&, const Progress&,
                                            const PlanHeard& better = {});

}  // namespace steelyard
