#include "core/planning/solver/plan_search.h"

#include "core/planning/solver/plan_moves.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

// Points of cost that a step may well lose, at the start of a round from nothing, of a later round, and at the end.
constexpr double kHot = 1.0;
constexpr double kWarm = 0.3;
constexpr double kCold = 0.02;
constexpr int kStepsBetweenLooks = 1'024;  // for a stop and for the temperature

// -ln of evenly spread chances, in 1/1024: what a step may lose, by chance, as a multiple of the temperature. Whole numbers,
// so that a last digit of the logarithm on another machine decides nothing.
class LossTable {
public:
    LossTable()
    {
        for (std::size_t i = 0; i < kSize; ++i)
            m_values[i] = std::llround(-1'024 * std::log((static_cast<double>(i) + 0.5) / static_cast<double>(kSize)));
    }
    [[nodiscard]] std::int64_t loss(std::int64_t temperature, SplitMix& random) const
    {
        return (temperature * m_values[random.next() & (kSize - 1)]) >> 10;
    }

private:
    static constexpr std::size_t kSize = 4'096;
    std::array<std::int64_t, kSize> m_values{};
};

class PlanSearch {
public:
    PlanSearch(const PlanProblem& problem, const PlanSearchOptions& options, const Progress& progress)
        : m_model(problem),
          m_state(m_model),
          m_random(options.seed),
          m_moves(m_model, m_state, m_random),
          m_progress(progress),
          m_steps(std::max<std::int64_t>(options.steps, 1))
    {
        place(options.start);
        m_best = m_state.setsByCell();
        m_bestCost = m_state.cost();
    }

    // False when asked to stop.
    [[nodiscard]] bool run(const PlanHeard& better)
    {
        std::int64_t heard = std::numeric_limits<std::int64_t>::max();
        for (int number = 0; m_done < m_steps; ++number) {
            if (!round(number)) return false;
            if (better && m_bestCost < heard) better(answer());
            heard = m_bestCost;
        }
        m_progress.report(1);
        return true;
    }

    [[nodiscard]] PlanAnswer answer() const { return m_model.answerOf(m_best); }

private:
    void place(const std::vector<PlanSlot>& start);
    void goTo(const std::vector<int>& setsByCell);
    [[nodiscard]] bool round(int number);
    void look(std::int64_t temperature);

    PlanModel m_model;
    PlanState m_state;
    SplitMix m_random;
    PlanMoves m_moves;
    const Progress& m_progress;
    LossTable m_losses;
    std::int64_t m_steps;
    std::int64_t m_done = 0;
    std::vector<int> m_best;
    std::int64_t m_bestCost = 0;
};

void PlanSearch::place(const std::vector<PlanSlot>& start)
{
    for (const PlanSlot& slot : start) {
        if (slot.candidate < 0 || slot.day < 0 || slot.day >= m_model.days()
            || slot.candidate >= static_cast<int>(m_model.candidates().size()))
            continue;
        const int cell = m_model.cell(slot.candidate, slot.day);
        const auto& candidate = m_model.candidates()[static_cast<std::size_t>(slot.candidate)];
        if (slot.sets < candidate.least || slot.sets > candidate.most
            || !std::ranges::binary_search(m_model.openCells(), cell))
            continue;
        m_state.change(cell, slot.sets);
        if (!m_state.allowed()) m_state.change(cell, 0);
    }
    m_moves.reset();
}

void PlanSearch::goTo(const std::vector<int>& setsByCell)
{
    for (const int cell : m_model.openCells()) m_state.change(cell, setsByCell[static_cast<std::size_t>(cell)]);
    m_moves.reset();
}

bool PlanSearch::round(int number)
{
    // Short rounds first, so that there is a plan soon.
    const std::int64_t share = number == 0 ? 20 : number == 1 ? 10 : 6;
    const std::int64_t steps = std::min(std::max<std::int64_t>(m_steps / share, 1), m_steps - m_done);
    if (number > 0) goTo(number % 3 == 2 ? m_model.pinnedSets() : m_best);
    const double from = number == 0 || number % 3 == 2 ? kHot : kWarm;
    for (std::int64_t done = 0; done < steps; done += kStepsBetweenLooks) {
        if (m_progress.cancelled()) return false;
        m_progress.report(static_cast<double>(m_done + done) / static_cast<double>(m_steps));
        const double part = static_cast<double>(done) / static_cast<double>(steps);
        const auto temperature = std::llround(from * std::pow(kCold / from, part) / kPlanCostUnit);
        for (std::int64_t i = std::min<std::int64_t>(kStepsBetweenLooks, steps - done); i > 0; --i) look(temperature);
    }
    m_done += steps;
    return true;
}

void PlanSearch::look(std::int64_t temperature)
{
    const std::int64_t before = m_state.cost();
    if (!m_moves.propose()) return;
    if (m_state.cost() > before + m_losses.loss(temperature, m_random)) return m_moves.takeBack();
    m_moves.keep();
    if (m_state.cost() >= m_bestCost) return;
    m_bestCost = m_state.cost();
    m_best = m_state.setsByCell();
}

}  // namespace

Result<PlanAnswer> searchPlan(const PlanProblem& problem, const PlanSearchOptions& options, const Progress& progress,
                              const PlanHeard& better)
{
    if (const Problems problems = validate(problem); !problems.empty())
        return fail(ErrorCode::Invalid, problems.front().text, problems.front().field);
    PlanSearch search(problem, options, progress);
    if (!search.run(better)) return fail(ErrorCode::Cancelled, {});
    return search.answer();
}

}  // namespace steelyard
