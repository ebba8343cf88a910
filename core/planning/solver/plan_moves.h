// The steps that the search tries: each changes a few cells of a plan and can be taken back.
//
//   PlanMoves moves(model, state, random);
//   if (moves.propose() && state.cost() > limit) moves.takeBack();   else moves.keep();
//
// Model, state and random outlive the moves; nobody else changes the state meanwhile.
#pragma once

#include "core/base/split_mix.h"
#include "core/planning/solver/plan_state.h"

namespace steelyard {

class PlanMoves {
public:
    PlanMoves(const PlanModel&, PlanState&, SplitMix&);

    // Makes a random step. False: there was none to make, or a limit forbids it; the state is as it was.
    [[nodiscard]] bool propose();
    void takeBack();
    void keep();
    // Fills the list of filled cells anew, after the state was changed from outside.
    void reset();

private:
    struct Change {
        int cell = 0;
        int before = 0;
        int after = 0;
    };
    void edit(int cell, int sets);
    [[nodiscard]] bool fits() const;
    [[nodiscard]] int randomFilled() { return m_filled[static_cast<std::size_t>(m_random->below(filledCount()))]; }
    [[nodiscard]] int randomOpen()
    {
        const auto& open = m_model->openCells();
        return open[static_cast<std::size_t>(m_random->below(static_cast<int>(open.size())))];
    }
    [[nodiscard]] int filledCount() const { return static_cast<int>(m_filled.size()); }
    [[nodiscard]] const PlanModel::Candidate& candidateAt(int cell) const
    {
        return m_model->candidates()[static_cast<std::size_t>(m_model->candidateOf(cell))];
    }
    [[nodiscard]] int setsNear(int cell, int sets);
    [[nodiscard]] int randomSets(int cell);
    [[nodiscard]] bool isOpen(int cell) const { return m_isOpen[static_cast<std::size_t>(cell)] != 0; }

    // Each lists its changes; an empty list is no step.
    void oneSet();
    void add();
    void remove();
    void replace();
    void moveDay();
    void swapSlots();
    void passSet();
    void makeRoom();
    void force();
    void moveInto(int from, int to);
    [[nodiscard]] bool clash(int cell, int other) const;
    void clear(int to);
    void freeMinutes(int day);
    [[nodiscard]] bool isChanged(int cell) const;
    void swapDays();

    const PlanModel* m_model;
    PlanState* m_state;
    SplitMix* m_random;
    std::vector<char> m_isOpen;
    std::vector<int> m_filled;   // open cells with sets
    std::vector<int> m_placeOf;  // of a cell in m_filled, -1 for none
    std::vector<Change> m_changes;
};

}  // namespace steelyard
