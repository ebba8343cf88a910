#include "core/planning/solver/plan_relaxation.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kMinutesEnough = 1'440;
constexpr int kBackEnough = 1'000;
constexpr int kSetsEnough = 12;  // of one exercise on one day; nobody asks for more
constexpr int kRelaxWeek = 7;
// Makes one wish worth more than all others together, as far as weights may go.
constexpr double kEmphasis = 50;
constexpr double kMostPlanWeight = 1'000;

template <class Change>
void forCandidates(PlanProblem& problem, Change&& change)
{
    for (PlanCandidate& candidate : problem.candidates) change(candidate);
}

// The free weekday that is furthest from the others; of equals the first.
std::optional<int> freeWeekday(const PlanProblem& problem)
{
    std::optional<int> found;
    int furthest = 0;
    for (int weekday = 1; weekday <= kRelaxWeek; ++weekday) {
        int nearest = kRelaxWeek;
        for (const PlanDay& day : problem.days) {
            const int apart = std::abs(day.weekday - weekday);
            nearest = std::min({nearest, apart, kRelaxWeek - apart});
        }
        if (nearest <= furthest) continue;
        furthest = nearest;
        found = weekday;
    }
    return found;
}

std::optional<int> addDay(PlanProblem& problem)
{
    const auto weekday = freeWeekday(problem);
    if (!weekday) return std::nullopt;
    double minutes = 0;
    for (const PlanDay& day : problem.days) minutes += day.minutes / static_cast<double>(problem.days.size());
    const auto place = std::ranges::upper_bound(problem.days, *weekday, {}, &PlanDay::weekday);
    const int at = static_cast<int>(place - problem.days.begin());
    problem.days.insert(place, {*weekday, minutes});
    forCandidates(problem, [&](PlanCandidate& candidate) {
        for (PlanPin& pin : candidate.pins)
            if (pin.day >= at) ++pin.day;
    });
    return at;
}

void lift(PlanProblem& problem, PlanLimit limit)
{
    int group = 0;
    switch (limit) {
    case PlanLimit::Minutes:
        for (PlanDay& day : problem.days) day.minutes = kMinutesEnough;
        return;
    case PlanLimit::BackADay:
        problem.limits.backADay = kBackEnough;
        return;
    case PlanLimit::BackBesideHigh:
        problem.limits.backBesideHigh = kBackEnough;
        return;
    case PlanLimit::ExercisesADay:
        problem.limits.exercisesADay = kMostPlanCandidates;
        return;
    case PlanLimit::OneOfAGroup:
        return forCandidates(problem, [&](PlanCandidate& candidate) { candidate.group = group++; });
    case PlanLimit::DaysApart:
        for (PlanMuscle& muscle : problem.muscles) muscle.leastDaysApart = 1;
        return;
    case PlanLimit::DaysAWeek:
        return forCandidates(problem, [](PlanCandidate& candidate) { candidate.mostDays = kRelaxWeek; });
    case PlanLimit::SetsADay:
        return forCandidates(problem, [](PlanCandidate& candidate) {
            candidate.leastSets = 1;
            candidate.mostSets = std::max(candidate.mostSets, kSetsEnough);
        });
    case PlanLimit::SparedJoint:
        for (PlanJoint& joint : problem.joints) joint.spared = false;
        return;
    case PlanLimit::Equipment:
        return forCandidates(problem, [](PlanCandidate& candidate) { candidate.possible = true; });
    case PlanLimit::Pins:
        return forCandidates(problem, [](PlanCandidate& candidate) { candidate.pins.clear(); });
    case PlanLimit::TrainingDays:
    case PlanLimit::OtherWishes:
    case PlanLimit::NoCandidate:
        return;
    }
}

}  // namespace

std::optional<RelaxedPlan> without(const PlanProblem& problem, PlanLimit limit)
{
    RelaxedPlan relaxed{problem, {}};
    if (limit == PlanLimit::TrainingDays)
        relaxed.newDay = addDay(relaxed.problem);
    else
        lift(relaxed.problem, limit);
    // Groups are only numbers: where each candidate has its own already, other numbers are the same problem.
    if (limit == PlanLimit::OneOfAGroup) {
        std::vector<int> groups;
        groups.reserve(problem.candidates.size());
        for (const PlanCandidate& candidate : problem.candidates) groups.push_back(candidate.group);
        std::ranges::sort(groups);
        if (std::ranges::adjacent_find(groups) == groups.end()) return std::nullopt;
    }
    if (relaxed.problem == problem) return std::nullopt;
    return relaxed;
}

PlanProblem withEmphasis(const PlanProblem& problem, const UnmetWish& wish)
{
    PlanProblem made = problem;
    const auto index = static_cast<std::size_t>(wish.index);
    const auto more = [](double weight) { return std::min(kMostPlanWeight, weight * kEmphasis); };
    switch (wish.wish) {
    case PlanWish::Under:
    case PlanWish::Over:
    case PlanWish::Crowding:
        made.muscles[index].weight = more(made.muscles[index].weight);
        break;
    case PlanWish::Joints:
        for (std::size_t i = 0; i < made.joints.size(); ++i)
            if (i != index) made.joints[i].complaint = 0;
        made.wishes.joints = more(made.wishes.joints);
        break;
    case PlanWish::Continuity:
        for (std::size_t i = 0; i < made.candidates.size(); ++i)
            if (i != index) made.candidates[i].continuity /= kEmphasis;
        made.wishes.continuity = more(made.wishes.continuity);
        break;
    case PlanWish::Thin:
        for (std::size_t i = 0; i < made.days.size(); ++i)
            if (i != index) made.days[i].leastSets = 0;
        made.wishes.thin = more(made.wishes.thin);
        break;
    case PlanWish::Rating:
    case PlanWish::Exercises:
        break;
    }
    return made;
}

}  // namespace steelyard
