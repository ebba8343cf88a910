// A plan problem in whole numbers, with the limits as they hold beside the pins: what search and bound compute with.
//
//   const PlanModel model(problem);                         // validate(problem) is empty
//   const PlanAnswer answer = model.answerOf(setsByCell);   // cell = candidate * days + day
//
// Units: sets in thousandths, minutes in thousandths, cost in millionths of a point. Whole numbers make the running cost of
// a search exact, and the same on every machine.
#pragma once

#include "core/planning/solver/plan_answer.h"

#include <algorithm>
#include <cstdint>
#include <span>

namespace steelyard {

inline constexpr std::int64_t kPlanThousand = 1'000;
inline constexpr double kPlanCostUnit = 1e-6;

class PlanModel {
public:
    struct Share {
        int muscle = 0;
        int thousandths = 0;
        bool target = false;
    };
    struct Candidate {
        std::vector<Share> shares;
        int group = 0;  // dense, from 0
        int back = 0;
        int minutesASet = 0;
        int setUp = 0;
        std::int64_t costASet = 0;  // joints and rating
        std::int64_t costOfAbsence = 0;
        int least = 0;
        int most = 0;
        int mostDays = 0;  // or as many as pins have
    };
    struct Band {
        int low = 0;
        int half = 0;  // of the low end
        int high = 0;
        int mostADay = 0;
        std::int64_t under = 0;  // cost a thousandth
        std::int64_t over = 0;
        std::int64_t crowding = 0;
    };
    struct Day {
        std::int64_t minutes = 0;  // this and the next three: or as much as pins use
        int back = 0;
        int exercises = 0;
        int leastSets = 0;
        int backBesideHigh = 0;  // its own back loading, when a day beside it holds a high one
        int next = -1;           // the day that follows directly, -1 for none
        int previous = -1;
    };

    explicit PlanModel(const PlanProblem&);

    [[nodiscard]] const PlanProblem& problem() const { return m_problem; }
    [[nodiscard]] int days() const { return static_cast<int>(m_days.size()); }
    [[nodiscard]] int cells() const { return static_cast<int>(m_pinned.size()); }
    [[nodiscard]] int groups() const { return m_groups; }
    [[nodiscard]] int cell(int candidate, int day) const { return candidate * days() + day; }
    // Where what is counted by muscle or group, day by day, stands in its list.
    [[nodiscard]] std::size_t ofDay(int muscleOrGroup, int day) const
    {
        return static_cast<std::size_t>(muscleOrGroup) * m_days.size() + static_cast<std::size_t>(day);
    }
    [[nodiscard]] int candidateOf(int cell) const { return m_places[static_cast<std::size_t>(cell)].candidate; }
    [[nodiscard]] int dayOf(int cell) const { return m_places[static_cast<std::size_t>(cell)].day; }

    [[nodiscard]] const std::vector<Candidate>& candidates() const { return m_candidates; }
    [[nodiscard]] const std::vector<Band>& bands() const { return m_bands; }
    [[nodiscard]] const Day& day(int day) const { return m_days[static_cast<std::size_t>(day)]; }
    [[nodiscard]] std::int64_t costOfExercise() const { return m_costOfExercise; }
    [[nodiscard]] std::int64_t costOfMissingSet() const { return m_costOfMissingSet; }
    // Sets that a cell is pinned to; absent: free or closed.
    [[nodiscard]] std::optional<int> pinned(int cell) const { return m_pinned[static_cast<std::size_t>(cell)]; }
    // Cells that may be filled, in order.
    [[nodiscard]] const std::vector<int>& openCells() const { return m_open; }
    // Days, as bits, on which a muscle may not be a target when it is one on this day.
    [[nodiscard]] unsigned closeDays(int muscle, int day) const { return m_close[ofDay(muscle, day)]; }
    [[nodiscard]] int mostOfGroup(int group, int day) const { return m_mostOfGroup[ofDay(group, day)]; }
    // Sets by cell with the pins alone.
    [[nodiscard]] std::vector<int> pinnedSets() const;

    [[nodiscard]] std::int64_t bandCost(int muscle, std::int64_t sets) const
    {
        const Band& band = m_bands[static_cast<std::size_t>(muscle)];
        if (sets < band.low) return band.under * (band.low - sets + (sets < band.half ? band.half - sets : 0));
        return sets > band.high ? band.over * (sets - band.high) : 0;
    }
    [[nodiscard]] std::int64_t crowdingCost(int muscle, std::int64_t sets) const
    {
        const Band& band = m_bands[static_cast<std::size_t>(muscle)];
        return sets > band.mostADay ? band.crowding * (sets - band.mostADay) : 0;
    }

    [[nodiscard]] std::int64_t thinCost(int day, int sets) const
    {
        return m_costOfMissingSet * std::max(0, this->day(day).leastSets - sets);
    }

    // Computed anew from the problem. Wishes stand without what is in their way.
    [[nodiscard]] PlanAnswer answerOf(std::span<const int> setsByCell) const;

private:
    void readCandidates();
    void readMuscles();
    void readDays();
    void makeRoomForPins();
    void findCloseDays();

    PlanProblem m_problem;
    std::vector<Candidate> m_candidates;
    std::vector<Band> m_bands;
    std::vector<Day> m_days;
    struct Place {
        int candidate = 0;
        int day = 0;
    };
    std::vector<Place> m_places;  // by cell: a search asks too often to divide each time
    std::vector<std::optional<int>> m_pinned;
    std::vector<int> m_open;
    std::vector<unsigned> m_close;
    std::vector<int> m_mostOfGroup;
    std::int64_t m_costOfExercise = 0;
    std::int64_t m_costOfMissingSet = 0;
    int m_groups = 0;
};

// The limits that a plan oversteps, as the problem states them: of an answer, those that its pins overstep by themselves.
[[nodiscard]] std::vector<OversteppedLimit> oversteppedLimits(const PlanProblem&, std::span<const PlanSlot>);
// The wishes that a plan leaves open, without what is in their way.
[[nodiscard]] std::vector<UnmetWish> unmetWishes(const PlanProblem&, std::span<const PlanSlot>);

}  // namespace steelyard
