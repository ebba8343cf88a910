#include "core/planning/solver/plan_state.h"

namespace steelyard {

PlanState::PlanState(const PlanModel& model)
    : m_model(&model),
      m_sets(static_cast<std::size_t>(model.cells())),
      m_weekly(model.bands().size()),
      m_daily(model.bands().size() * static_cast<std::size_t>(model.days())),
      m_targets(m_daily.size()),
      m_targetDays(model.bands().size()),
      m_ofGroup(static_cast<std::size_t>(model.groups() * model.days())),
      m_daysOf(model.candidates().size()),
      m_days(static_cast<std::size_t>(model.days()))
{
    for (int muscle = 0; muscle < static_cast<int>(model.bands().size()); ++muscle)
        m_cost += model.bandCost(muscle, 0) + model.days() * model.crowdingCost(muscle, 0);
    for (const PlanModel::Candidate& candidate : model.candidates()) m_cost += candidate.costOfAbsence;
    for (int day = 0; day < model.days(); ++day) m_cost += model.thinCost(day, 0);
    const auto pins = model.pinnedSets();
    for (int cell = 0; cell < model.cells(); ++cell)
        if (pins[static_cast<std::size_t>(cell)] > 0) change(cell, pins[static_cast<std::size_t>(cell)]);
}

void PlanState::change(int cell, int sets)
{
    const int before = m_sets[static_cast<std::size_t>(cell)];
    if (before == sets) return;
    m_sets[static_cast<std::size_t>(cell)] = sets;
    const int candidateAt = m_model->candidateOf(cell);
    const int dayAt = m_model->dayOf(cell);
    const PlanModel::Candidate& candidate = m_model->candidates()[static_cast<std::size_t>(candidateAt)];
    const int more = sets - before;
    const int presence = (sets > 0 ? 1 : 0) - (before > 0 ? 1 : 0);
    m_cost += more * candidate.costASet;
    for (const PlanModel::Share& share : candidate.shares) {
        std::int64_t& weekly = m_weekly[static_cast<std::size_t>(share.muscle)];
        std::int64_t& daily = m_daily[m_model->ofDay(share.muscle, dayAt)];
        m_cost -= m_model->bandCost(share.muscle, weekly) + m_model->crowdingCost(share.muscle, daily);
        weekly += more * share.thousandths;
        daily += more * share.thousandths;
        m_cost += m_model->bandCost(share.muscle, weekly) + m_model->crowdingCost(share.muscle, daily);
    }
    DayUse& use = m_days[static_cast<std::size_t>(dayAt)];
    const PlanModel::Day& day = m_model->day(dayAt);
    m_broken -= use.minutes > day.minutes ? 1 : 0;
    use.minutes += std::int64_t{more} * candidate.minutesASet + std::int64_t{presence} * candidate.setUp;
    m_broken += use.minutes > day.minutes ? 1 : 0;
    m_cost += m_model->thinCost(dayAt, use.sets + more) - m_model->thinCost(dayAt, use.sets);
    use.sets += more;
    if (presence != 0) changePresence(candidateAt, dayAt, presence);
}

int PlanState::brokenBack(int dayAt) const
{
    const PlanModel::Day& day = m_model->day(dayAt);
    const DayUse& use = m_days[static_cast<std::size_t>(dayAt)];
    const auto isHigh = [&](int beside) { return beside >= 0 && m_days[static_cast<std::size_t>(beside)].high > 0; };
    const bool besideHigh = isHigh(day.previous) || isHigh(day.next);
    return (use.back > day.back ? 1 : 0) + (besideHigh && use.back > day.backBesideHigh ? 1 : 0);
}

void PlanState::changeBack(int back, int dayAt, int by)
{
    const PlanModel::Day& day = m_model->day(dayAt);
    const auto around = [&] {
        return brokenBack(dayAt) + (day.previous >= 0 ? brokenBack(day.previous) : 0)
               + (day.next >= 0 ? brokenBack(day.next) : 0);
    };
    m_broken -= around();
    DayUse& use = m_days[static_cast<std::size_t>(dayAt)];
    use.back += by * back;
    if (back == kMostBackLoading) use.high += by;
    m_broken += around();
}

void PlanState::changePresence(int candidateAt, int dayAt, int by)
{
    const PlanModel::Candidate& candidate = m_model->candidates()[static_cast<std::size_t>(candidateAt)];
    m_cost += by * m_model->costOfExercise();
    if (candidate.back > 0) changeBack(candidate.back, dayAt, by);

    // A limit is overstepped or not, by however much.
    const auto count = [&](int& value, int most) {
        m_broken -= value > most ? 1 : 0;
        value += by;
        m_broken += value > most ? 1 : 0;
    };
    count(m_days[static_cast<std::size_t>(dayAt)].exercises, m_model->day(dayAt).exercises);
    count(m_ofGroup[m_model->ofDay(candidate.group, dayAt)], m_model->mostOfGroup(candidate.group, dayAt));
    int& daysOf = m_daysOf[static_cast<std::size_t>(candidateAt)];
    if (daysOf == 0) m_cost -= candidate.costOfAbsence;
    count(daysOf, candidate.mostDays);
    if (daysOf == 0) m_cost += candidate.costOfAbsence;

    for (const PlanModel::Share& share : candidate.shares) {
        if (!share.target) continue;
        int& targets = m_targets[m_model->ofDay(share.muscle, dayAt)];
        unsigned& onDays = m_targetDays[static_cast<std::size_t>(share.muscle)];
        const bool was = targets > 0;
        targets += by;
        if (was == (targets > 0)) continue;
        m_broken += by * std::popcount(onDays & m_model->closeDays(share.muscle, dayAt));
        onDays ^= 1U << dayAt;
    }
}

}  // namespace steelyard
