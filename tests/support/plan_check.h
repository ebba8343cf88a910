// Cost and limits of a plan, computed the slow way from the problem as its header states it: what the solver's own arithmetic
// is checked against. Nothing here is shared with the solver.
//
//   planCost(problem, placed)                 // points
//   brokenBeyondPins(problem, placed)         // what is wrong, in words; empty when every limit is kept
#pragma once

#include "core/planning/solver/plan_answer.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

namespace steelyard::testing_support {

class PlanCheck {
public:
    PlanCheck(const PlanProblem& problem, const std::vector<PlanSlot>& placed) : m_problem(problem), m_placed(placed) {}

    [[nodiscard]] double cost() const
    {
        const PlanWishes& wishes = m_problem.wishes;
        double points = wishes.exercises * static_cast<double>(m_placed.size());
        for (std::size_t m = 0; m < m_problem.muscles.size(); ++m) {
            const PlanMuscle& muscle = m_problem.muscles[m];
            double week = 0;
            for (std::size_t d = 0; d < m_problem.days.size(); ++d) {
                const double day = sets(m, d);
                week += day;
                points += wishes.crowding * muscle.weight * std::max(0.0, day - muscle.mostADay);
            }
            points += wishes.under * muscle.weight
                      * (std::max(0.0, muscle.low - week) + std::max(0.0, muscle.low / 2 - week));
            points += wishes.over * muscle.weight * std::max(0.0, week - muscle.high);
        }
        for (std::size_t d = 0; d < m_problem.days.size(); ++d) {
            int done = 0;
            for (const PlanSlot& slot : m_placed) done += slot.day == static_cast<int>(d) ? slot.sets : 0;
            points += wishes.thin * std::max(0, m_problem.days[d].leastSets - done);
        }
        std::set<int> used;
        for (const PlanSlot& slot : m_placed) {
            used.insert(slot.candidate);
            const PlanCandidate& one = of(slot);
            points += wishes.rating * slot.sets * (1 - one.rating);
            for (const int joint : one.joints)
                points += wishes.joints * slot.sets * m_problem.joints.at(static_cast<std::size_t>(joint)).complaint;
        }
        for (std::size_t i = 0; i < m_problem.candidates.size(); ++i)
            if (!used.contains(static_cast<int>(i))) points += wishes.continuity * m_problem.candidates[i].continuity;
        return points;
    }

    // How much of every limit is used, and by how much it is overstepped, in a fixed order: of two plans each limit can be
    // compared by its place.
    struct Use {
        std::string name;
        double over = 0;
    };
    [[nodiscard]] std::vector<Use> uses() const
    {
        std::vector<Use> found;
        const auto add = [&](const std::string& name, std::size_t at, double used, double limit) {
            found.push_back({name + " " + std::to_string(at), std::max(0.0, used - limit)});
        };
        for (std::size_t d = 0; d < m_problem.days.size(); ++d) {
            double minutes = 0;
            double exercises = 0;
            std::multiset<int> groups;
            for (const PlanSlot& slot : m_placed) {
                if (slot.day != static_cast<int>(d)) continue;
                minutes += of(slot).setUpMinutes + slot.sets * of(slot).minutesASet;
                ++exercises;
                groups.insert(of(slot).group);
            }
            double doubled = 0;
            for (const int group : std::set<int>(groups.begin(), groups.end()))
                doubled += static_cast<double>(groups.count(group)) - 1;
            add("minutes", d, minutes, m_problem.days[d].minutes + 1e-9);
            add("exercises", d, exercises, m_problem.limits.exercisesADay);
            add("groups", d, doubled, 0);
            add("back", d, back(d), m_problem.limits.backADay);
            add("back beside", d, isBesideHigh(d) ? back(d) : 0, m_problem.limits.backBesideHigh);
        }
        for (std::size_t m = 0; m < m_problem.muscles.size(); ++m) add("apart", m, closePairs(m), 0);
        for (std::size_t i = 0; i < m_problem.candidates.size(); ++i) {
            double days = 0;
            for (const PlanSlot& slot : m_placed) days += slot.candidate == static_cast<int>(i) ? 1 : 0;
            add("days", i, days, m_problem.candidates[i].mostDays);
        }
        return found;
    }

    // Of single slots, which pins are free of.
    [[nodiscard]] std::string oddSlots() const
    {
        std::string odd;
        std::set<std::pair<int, int>> seen;
        for (const PlanSlot& slot : m_placed) {
            const PlanCandidate& one = of(slot);
            if (!seen.insert({slot.candidate, slot.day}).second) odd += "twice; ";
            const auto pin = std::ranges::find(one.pins, slot.day, &PlanPin::day);
            if (pin != one.pins.end()) {
                if (pin->sets != slot.sets || !slot.pinned) odd += "pin not kept; ";
                continue;
            }
            if (slot.pinned) odd += "called pinned; ";
            if (slot.sets < one.leastSets || slot.sets > one.mostSets) odd += "sets; ";
            if (!one.possible) odd += "equipment; ";
            for (const int joint : one.joints)
                if (m_problem.joints.at(static_cast<std::size_t>(joint)).spared) odd += "spared joint; ";
        }
        for (std::size_t i = 0; i < m_problem.candidates.size(); ++i)
            for (const PlanPin& pin : m_problem.candidates[i].pins)
                if (pin.sets > 0 && !seen.contains({static_cast<int>(i), pin.day})) odd += "pin missing; ";
        return odd;
    }

private:
    [[nodiscard]] const PlanCandidate& of(const PlanSlot& slot) const
    {
        return m_problem.candidates.at(static_cast<std::size_t>(slot.candidate));
    }
    [[nodiscard]] double share(const PlanSlot& slot, std::size_t muscle) const
    {
        for (const PlanShare& one : of(slot).shares)
            if (one.muscle == static_cast<int>(muscle)) return one.share;
        return 0;
    }
    [[nodiscard]] double sets(std::size_t muscle, std::size_t day) const
    {
        double sum = 0;
        for (const PlanSlot& slot : m_placed)
            if (slot.day == static_cast<int>(day)) sum += slot.sets * share(slot, muscle);
        return sum;
    }
    [[nodiscard]] double back(std::size_t day) const
    {
        double sum = 0;
        for (const PlanSlot& slot : m_placed)
            if (slot.day == static_cast<int>(day)) sum += of(slot).backLoading;
        return sum;
    }
    // By stepping through the calendar, which repeats.
    [[nodiscard]] int daysUntil(std::size_t from, std::size_t to) const
    {
        int weekday = m_problem.days[from].weekday;
        int steps = 0;
        do {
            weekday = weekday == 7 ? 1 : weekday + 1;
            ++steps;
        } while (weekday != m_problem.days[to].weekday);
        return steps;
    }
    [[nodiscard]] bool isBesideHigh(std::size_t day) const
    {
        for (const PlanSlot& slot : m_placed)
            if (of(slot).backLoading == 2 && slot.day != static_cast<int>(day)
                && (daysUntil(day, static_cast<std::size_t>(slot.day)) == 1
                    || daysUntil(static_cast<std::size_t>(slot.day), day) == 1))
                return true;
        return false;
    }
    [[nodiscard]] bool targets(std::size_t muscle, std::size_t day) const
    {
        return std::ranges::any_of(m_placed, [&](const PlanSlot& slot) {
            return slot.day == static_cast<int>(day) && share(slot, muscle) == 1;
        });
    }
    [[nodiscard]] double closePairs(std::size_t muscle) const
    {
        double pairs = 0;
        for (std::size_t a = 0; a < m_problem.days.size(); ++a)
            for (std::size_t b = 0; b < a; ++b)
                if (targets(muscle, a) && targets(muscle, b)
                    && std::min(daysUntil(a, b), daysUntil(b, a)) < m_problem.muscles[muscle].leastDaysApart)
                    ++pairs;
        return pairs;
    }

    const PlanProblem& m_problem;
    const std::vector<PlanSlot>& m_placed;
};

inline double planCost(const PlanProblem& problem, const std::vector<PlanSlot>& placed)
{
    return PlanCheck(problem, placed).cost();
}

inline std::vector<PlanSlot> pinsAlone(const PlanProblem& problem)
{
    std::vector<PlanSlot> placed;
    for (std::size_t i = 0; i < problem.candidates.size(); ++i)
        for (const PlanPin& pin : problem.candidates[i].pins)
            if (pin.sets > 0) placed.push_back({static_cast<int>(i), pin.day, pin.sets, true});
    return placed;
}

inline std::string brokenBeyondPins(const PlanProblem& problem, const std::vector<PlanSlot>& placed)
{
    const auto pins = pinsAlone(problem);
    const auto before = PlanCheck(problem, pins).uses();
    const auto after = PlanCheck(problem, placed).uses();
    std::string broken = PlanCheck(problem, placed).oddSlots();
    for (std::size_t i = 0; i < after.size(); ++i)
        if (after[i].over > before[i].over + 1e-9) broken += after[i].name + "; ";
    return broken;
}

}  // namespace steelyard::testing_support
