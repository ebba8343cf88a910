// A plan while it is searched for: one cell changes at a time, and the cost and whether every limit holds are known at once.
//
//   PlanState state(model);                 // the pins alone
//   state.change(cell, 3);
//   if (!state.allowed()) state.change(cell, 0);
//   state.cost()                            // millionths of a point, exact (plan_model.h)
//
// The model outlives the state. A change takes time by the muscles of its candidate, whatever the size of the plan.
#pragma once

#include "core/planning/solver/plan_model.h"

#include <bit>

namespace steelyard {

class PlanState {
public:
    explicit PlanState(const PlanModel&);

    void change(int cell, int sets);
    [[nodiscard]] bool allowed() const { return m_broken == 0; }
    [[nodiscard]] std::int64_t cost() const { return m_cost; }
    [[nodiscard]] int sets(int cell) const { return m_sets[static_cast<std::size_t>(cell)]; }
    [[nodiscard]] const std::vector<int>& setsByCell() const { return m_sets; }
    [[nodiscard]] std::int64_t minutesLeft(int day) const
    {
        return m_model->day(day).minutes - m_days[static_cast<std::size_t>(day)].minutes;
    }
    [[nodiscard]] std::int64_t minutesOf(int cell, int sets) const
    {
        const auto& candidate = m_model->candidates()[static_cast<std::size_t>(m_model->candidateOf(cell))];
        return sets > 0 ? candidate.setUp + std::int64_t{sets} * candidate.minutesASet : 0;
    }

private:
    struct DayUse {
        std::int64_t minutes = 0;
        int back = 0;
        int high = 0;  // exercises of high back loading
        int exercises = 0;
        int sets = 0;
    };
    [[nodiscard]] int brokenBack(int day) const;
    void changePresence(int candidate, int day, int by);
    void changeBack(int back, int day, int by);

    const PlanModel* m_model;
    std::vector<int> m_sets;
    std::vector<std::int64_t> m_weekly;  // by muscle
    std::vector<std::int64_t> m_daily;   // by muscle and day
    std::vector<int> m_targets;          // exercises by muscle and day that have it as a target
    std::vector<unsigned> m_targetDays;  // by muscle, as bits
    std::vector<int> m_ofGroup;          // exercises by group and day
    std::vector<int> m_daysOf;           // by candidate
    std::vector<DayUse> m_days;
    std::int64_t m_cost = 0;
    int m_broken = 0;  // limits that are overstepped
};

}  // namespace steelyard
