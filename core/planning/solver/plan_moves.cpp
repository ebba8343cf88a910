#include "core/planning/solver/plan_moves.h"

#include <algorithm>
#include <array>

namespace steelyard {

PlanMoves::PlanMoves(const PlanModel& model, PlanState& state, SplitMix& random)
    : m_model(&model),
      m_state(&state),
      m_random(&random),
      m_isOpen(static_cast<std::size_t>(model.cells())),
      m_placeOf(static_cast<std::size_t>(model.cells()), -1)
{
    for (const int cell : model.openCells()) m_isOpen[static_cast<std::size_t>(cell)] = 1;
    reset();
}

void PlanMoves::reset()
{
    m_filled.clear();
    m_changes.clear();
    std::ranges::fill(m_placeOf, -1);
    for (const int cell : m_model->openCells())
        if (m_state->sets(cell) > 0) {
            m_placeOf[static_cast<std::size_t>(cell)] = filledCount();
            m_filled.push_back(cell);
        }
}

void PlanMoves::edit(int cell, int sets)
{
    const int before = m_state->sets(cell);
    if (before != sets) m_changes.push_back({cell, before, sets});
}

int PlanMoves::randomSets(int cell)
{
    const auto& candidate = candidateAt(cell);
    return candidate.least + m_random->below(candidate.most - candidate.least + 1);
}

int PlanMoves::setsNear(int cell, int sets)
{
    const auto& candidate = candidateAt(cell);
    return std::clamp(sets - 1 + m_random->below(3), candidate.least, candidate.most);
}

void PlanMoves::oneSet()
{
    if (m_filled.empty()) return;
    const int cell = randomFilled();
    const int sets = m_state->sets(cell) + (m_random->below(2) == 0 ? 1 : -1);
    if (sets >= candidateAt(cell).least && sets <= candidateAt(cell).most) edit(cell, sets);
}

void PlanMoves::add()
{
    const int cell = randomOpen();
    if (m_state->sets(cell) == 0) edit(cell, randomSets(cell));
}

void PlanMoves::remove()
{
    if (!m_filled.empty()) edit(randomFilled(), 0);
}

void PlanMoves::replace()
{
    if (m_filled.empty()) return;
    const int from = randomFilled();
    const int to = m_model->cell(m_model->candidateOf(randomOpen()), m_model->dayOf(from));
    if (!isOpen(to) || m_state->sets(to) > 0) return;
    edit(from, 0);
    edit(to, setsNear(to, m_state->sets(from)));
}

void PlanMoves::moveDay()
{
    if (m_filled.empty() || m_model->days() < 2) return;
    const int from = randomFilled();
    const int to = m_model->cell(m_model->candidateOf(from), m_random->below(m_model->days()));
    if (!isOpen(to) || m_state->sets(to) > 0) return;
    edit(from, 0);
    edit(to, setsNear(to, m_state->sets(from)));
}

void PlanMoves::swapSlots()
{
    if (filledCount() < 2) return;
    const int a = randomFilled();
    const int b = randomFilled();
    if (m_model->dayOf(a) == m_model->dayOf(b)) return;
    const int toA = m_model->cell(m_model->candidateOf(a), m_model->dayOf(b));
    const int toB = m_model->cell(m_model->candidateOf(b), m_model->dayOf(a));
    if (!isOpen(toA) || !isOpen(toB) || m_state->sets(toA) > 0 || m_state->sets(toB) > 0) return;
    edit(a, 0);
    edit(b, 0);
    edit(toA, setsNear(toA, m_state->sets(a)));
    edit(toB, setsNear(toB, m_state->sets(b)));
}

void PlanMoves::passSet()
{
    if (filledCount() < 2) return;
    const int from = randomFilled();
    const int to = randomFilled();
    if (from == to || m_state->sets(to) >= candidateAt(to).most) return;
    const int left = m_state->sets(from) - 1;
    edit(from, left < candidateAt(from).least ? 0 : left);
    edit(to, m_state->sets(to) + 1);
}

void PlanMoves::makeRoom()
{
    if (m_filled.empty()) return;
    const int to = randomOpen();
    if (m_state->sets(to) > 0) return;
    edit(to, randomSets(to));
    const int giving = 1 + m_random->below(2);
    for (int i = 0; i < giving; ++i) {
        const int from = randomFilled();
        if (std::ranges::any_of(m_changes, [&](const Change& change) { return change.cell == from; })) continue;
        const int left = m_state->sets(from) - 1 - m_random->below(3);
        edit(from, left < candidateAt(from).least ? 0 : left);
    }
}

bool PlanMoves::isChanged(int cell) const
{
    return std::ranges::any_of(m_changes, [&](const Change& change) { return change.cell == cell; });
}

bool PlanMoves::clash(int cell, int other) const
{
    const auto& one = candidateAt(cell);
    const auto& two = candidateAt(other);
    const int day = m_model->dayOf(cell);
    const int otherDay = m_model->dayOf(other);
    if (day == otherDay) return one.group == two.group && m_model->mostOfGroup(one.group, day) == 1;
    if (m_model->candidateOf(cell) == m_model->candidateOf(other)) return one.mostDays == 1;
    for (const PlanModel::Share& share : one.shares)
        if (share.target && (m_model->closeDays(share.muscle, day) >> otherDay & 1U) != 0)
            for (const PlanModel::Share& same : two.shares)
                if (same.target && same.muscle == share.muscle) return true;
    const bool beside = m_model->day(day).next == otherDay || m_model->day(day).previous == otherDay;
    if (!beside) return false;
    return (one.back == kMostBackLoading && two.back > m_model->day(otherDay).backBesideHigh)
           || (two.back == kMostBackLoading && one.back > m_model->day(day).backBesideHigh);
}

// Takes out what can't stand beside an exercise that comes in.
void PlanMoves::clear(int to)
{
    for (const int cell : m_filled)
        if (!isChanged(cell) && clash(to, cell)) edit(cell, 0);
}

void PlanMoves::freeMinutes(int day)
{
    std::int64_t left = m_state->minutesLeft(day);
    for (const Change& change : m_changes)
        if (m_model->dayOf(change.cell) == day)
            left -= m_state->minutesOf(change.cell, change.after) - m_state->minutesOf(change.cell, change.before);
    if (left >= 0 || m_filled.empty()) return;
    const int start = m_random->below(filledCount());
    for (int i = 0; i < filledCount() && left < 0; ++i) {
        const int cell = m_filled[static_cast<std::size_t>((start + i) % filledCount())];
        if (m_model->dayOf(cell) != day || isChanged(cell)) continue;
        const int sets = m_state->sets(cell);
        int fewer = sets;
        while (fewer > 0 && left + m_state->minutesOf(cell, sets) - m_state->minutesOf(cell, fewer) < 0)
            fewer = fewer > candidateAt(cell).least ? fewer - 1 : 0;
        edit(cell, fewer);
        left += m_state->minutesOf(cell, sets) - m_state->minutesOf(cell, fewer);
    }
}

void PlanMoves::force()
{
    const int to = randomOpen();
    if (m_state->sets(to) > 0) return;
    edit(to, randomSets(to));
    clear(to);
    freeMinutes(m_model->dayOf(to));
}

void PlanMoves::swapDays()
{
    const int a = m_random->below(m_model->days());
    const int b = m_random->below(m_model->days());
    if (a == b) return;
    for (int candidate = 0; candidate < static_cast<int>(m_model->candidates().size()); ++candidate) {
        const int onA = m_model->cell(candidate, a);
        const int onB = m_model->cell(candidate, b);
        if (!isOpen(onA) || !isOpen(onB)) continue;
        edit(onA, m_state->sets(onB));
        edit(onB, m_state->sets(onA));
    }
}

bool PlanMoves::fits() const
{
    // Minutes forbid most steps, and are cheaper to see than to try.
    std::array<std::int64_t, kMostPlanDays> more{};
    for (const Change& change : m_changes)
        more[static_cast<std::size_t>(m_model->dayOf(change.cell))] +=
            m_state->minutesOf(change.cell, change.after) - m_state->minutesOf(change.cell, change.before);
    for (const Change& change : m_changes) {
        const int day = m_model->dayOf(change.cell);
        if (more[static_cast<std::size_t>(day)] > m_state->minutesLeft(day)) return false;
    }
    return true;
}

bool PlanMoves::propose()
{
    m_changes.clear();
    if (m_model->openCells().empty()) return false;
    constexpr int kAll = 256;
    const int kind = m_random->below(kAll);
    if (kind < 60)
        oneSet();
    else if (kind < 85)
        add();
    else if (kind < 95)
        remove();
    else if (kind < 145)
        replace();
    else if (kind < 170)
        moveDay();
    else if (kind < 195)
        swapSlots();
    else if (kind < 225)
        passSet();
    else if (kind < 240)
        makeRoom();
    else if (kind < 255)
        force();
    else
        swapDays();
    if (m_changes.empty() || !fits()) return false;
    for (const Change& change : m_changes) m_state->change(change.cell, change.after);
    if (m_state->allowed()) return true;
    takeBack();
    return false;
}

void PlanMoves::takeBack()
{
    for (const Change& change : m_changes) m_state->change(change.cell, change.before);
    m_changes.clear();
}

void PlanMoves::keep()
{
    for (const Change& change : m_changes) {
        int& place = m_placeOf[static_cast<std::size_t>(change.cell)];
        if (change.after > 0 && place < 0) {
            place = filledCount();
            m_filled.push_back(change.cell);
        } else if (change.after == 0 && place >= 0) {
            const int last = m_filled.back();
            m_filled[static_cast<std::size_t>(place)] = last;
            m_placeOf[static_cast<std::size_t>(last)] = place;
            m_filled.pop_back();
            m_placeOf[static_cast<std::size_t>(change.cell)] = -1;
        }
    }
    m_changes.clear();
}

}  // namespace steelyard
