#include "core/planning/proposal/proposal_weeks.h"

#include "core/planning/block_ops.h"
#include "core/planning/replan.h"
#include "core/planning/solver/plan_model.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace steelyard {
namespace {

constexpr double kFirstQuarter = 0.25;
constexpr double kLastQuarter = 0.75;

// What a plan may not do worse than it does now.
bool isNoWorse(const PlanProblem& problem, const std::vector<PlanSlot>& before, const std::vector<PlanSlot>& after)
{
    const auto broken = oversteppedLimits(problem, before);
    for (const OversteppedLimit& one : oversteppedLimits(problem, after))
        if (std::ranges::find(broken, one) == broken.end()) return false;
    const auto missed = unmetWishes(problem, before);
    for (const UnmetWish& one : unmetWishes(problem, after)) {
        if (one.wish == PlanWish::Joints || one.wish == PlanWish::Continuity) continue;
        const auto same = std::ranges::find_if(
            missed, [&](const UnmetWish& other) { return other.wish == one.wish && other.index == one.index; });
        if (same == missed.end() || one.missing > same->missing) return false;
    }
    return true;
}

class WeekMaker {
public:
    WeekMaker(const ProposalProblem& made, const PlanAnswer& answer, const ProposalWishes& wishes)
        : m_made(made), m_answer(answer), m_wishes(wishes)
    {}

    [[nodiscard]] ProposalWeeks run()
    {
        const bool deload = m_wishes.weeks >= kLeastWeeksWithDeload;
        m_workWeeks = m_wishes.weeks - (deload ? 1 : 0);
        for (int week = 0; week < m_wishes.weeks; ++week)
            m_weeks.weeks.push_back(weekOf(week, week < m_workWeeks ? WeekKind::Normal : WeekKind::Deload));
        return std::move(m_weeks);
    }

private:
    [[nodiscard]] std::vector<PlanSlot> placedIn(int week, WeekKind kind) const;
    [[nodiscard]] PlannedWeek weekOf(int week, WeekKind kind);
    [[nodiscard]] Slot slotOf(const PlanSlot& placed, int week, WeekKind kind) const;
    [[nodiscard]] const Slot* pinOf(const PlanSlot& placed) const;
    [[nodiscard]] QDate dateOf(int week, int day) const;
    [[nodiscard]] bool isOff(QDate date) const
    {
        return std::ranges::any_of(m_wishes.daysOff,
                                   [&](const DaysOff& off) { return date >= off.first && date <= off.last; });
    }
    [[nodiscard]] std::optional<QDate> otherDay(int week, int day, const std::vector<QDate>& dates) const;
    [[nodiscard]] bool keepsLimits(const std::vector<QDate>& dates) const;

    const ProposalProblem& m_made;
    const PlanAnswer& m_answer;
    const ProposalWishes& m_wishes;
    int m_workWeeks = 1;
    ProposalWeeks m_weeks;
};

std::vector<PlanSlot> WeekMaker::placedIn(int week, WeekKind kind) const
{
    auto placed = m_answer.placed;
    if (kind == WeekKind::Normal && m_workWeeks > 1) {
        const double part = static_cast<double>(week) / (m_workWeeks - 1);
        if (part < kFirstQuarter) placed = withSetsShifted(m_made.problem, std::move(placed), -1);
        if (part > kLastQuarter) placed = withSetsShifted(m_made.problem, std::move(placed), 1);
    }
    return inSessionOrder(m_made.problem, std::move(placed));
}

QDate WeekMaker::dateOf(int week, int day) const
{
    const QDate first = m_wishes.from.addDays(kDaysOfPlanWeek * week);
    const int weekday = m_made.problem.days[static_cast<std::size_t>(day)].weekday;
    return first.addDays((weekday - first.dayOfWeek() + kDaysOfPlanWeek) % kDaysOfPlanWeek);
}

// Whether the week's sessions on other dates overstep nothing that they didn't before.
bool WeekMaker::keepsLimits(const std::vector<QDate>& dates) const
{
    std::vector<std::size_t> order(dates.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::ranges::sort(order, {}, [&](std::size_t day) { return dates[day].dayOfWeek(); });
    PlanProblem moved = m_made.problem;
    std::vector<PlanSlot> placed = m_answer.placed;
    for (std::size_t place = 0; place < order.size(); ++place) {
        moved.days[place] = m_made.problem.days[order[place]];
        moved.days[place].weekday = dates[order[place]].dayOfWeek();
        for (std::size_t i = 0; i < placed.size(); ++i)
            if (m_answer.placed[i].day == static_cast<int>(order[place])) placed[i].day = static_cast<int>(place);
    }
    return oversteppedLimits(moved, placed).size() <= oversteppedLimits(m_made.problem, m_answer.placed).size();
}

std::optional<QDate> WeekMaker::otherDay(int week, int day, const std::vector<QDate>& dates) const
{
    const QDate first = m_wishes.from.addDays(kDaysOfPlanWeek * week);
    const QDate wanted = dates[static_cast<std::size_t>(day)];
    std::vector<QDate> free;
    for (int i = 0; i < kDaysOfPlanWeek; ++i)
        if (const QDate date = first.addDays(i); !isOff(date) && std::ranges::find(dates, date) == dates.end())
            free.push_back(date);
    std::ranges::stable_sort(free, {}, [&](QDate date) { return std::abs(wanted.daysTo(date)); });
    for (const QDate date : free) {
        auto changed = dates;
        changed[static_cast<std::size_t>(day)] = date;
        if (keepsLimits(changed)) return date;
    }
    return std::nullopt;
}

const Slot* WeekMaker::pinOf(const PlanSlot& placed) const
{
    const int weekday = m_made.problem.days[static_cast<std::size_t>(placed.day)].weekday;
    const LiftLine& lift = m_made.choices[static_cast<std::size_t>(placed.candidate)].lift;
    const Slot wanted{lift.variant, lift.grip, lift.standard};
    for (const PinnedSlot& pin : m_wishes.pinned)
        if (pin.weekday == weekday && isSameLift(pin.slot, wanted)) return &pin.slot;
    return nullptr;
}

Slot WeekMaker::slotOf(const PlanSlot& placed, int week, WeekKind kind) const
{
    const Slot* pin = placed.pinned ? pinOf(placed) : nullptr;
    Slot slot = pin ? *pin : m_made.choices[static_cast<std::size_t>(placed.candidate)].slot;
    slot.sets = placed.sets;
    if (kind == WeekKind::Deload) {
        slot.plannedRir = Decimal(kUsualReserve);
        return easedSlot(slot, m_wishes.easing);
    }
    if (!pin || !pin->plannedRir) slot.plannedRir = Decimal(reserveOfWeek(week, m_workWeeks));
    return slot;
}

PlannedWeek WeekMaker::weekOf(int week, WeekKind kind)
{
    std::vector<QDate> dates;
    dates.reserve(m_made.problem.days.size());
    for (int day = 0; day < static_cast<int>(m_made.problem.days.size()); ++day) dates.push_back(dateOf(week, day));
    std::vector<bool> held(dates.size(), true);
    for (std::size_t day = 0; day < dates.size(); ++day) {
        if (!isOff(dates[day])) continue;
        const QDate from = dates[day];
        const auto to = otherDay(week, static_cast<int>(day), dates);
        m_weeks.moved.push_back({from, to});
        if (to) dates[day] = *to;
        held[day] = to.has_value();
    }
    PlannedWeek made{kind, {}};
    const auto placed = placedIn(week, kind);
    for (std::size_t day = 0; day < dates.size(); ++day) {
        if (!held[day]) continue;
        PlannedDay planned{dates[day], {}, {}};
        for (const PlanSlot& slot : placed)
            if (slot.day == static_cast<int>(day)) planned.slotList.push_back(slotOf(slot, week, kind));
        if (!planned.slotList.empty()) made.days.push_back(std::move(planned));
    }
    std::ranges::sort(made.days, {}, &PlannedDay::date);
    return made;
}

}  // namespace

std::vector<PlanSlot> withSetsShifted(const PlanProblem& problem, std::vector<PlanSlot> placed, int by)
{
    for (std::size_t i = 0; i < placed.size(); ++i) {
        if (placed[i].pinned) continue;
        auto changed = placed;
        changed[i].sets += by;
        if (isNoWorse(problem, placed, changed)) placed = std::move(changed);
    }
    return placed;
}

std::vector<PlanSlot> inSessionOrder(const PlanProblem& problem, std::vector<PlanSlot> placed)
{
    std::ranges::stable_sort(placed, {}, [&](const PlanSlot& slot) {
        const PlanCandidate& one = problem.candidates[static_cast<std::size_t>(slot.candidate)];
        return std::tuple(slot.day, -one.backLoading, -static_cast<int>(one.shares.size()), slot.candidate);
    });
    return placed;
}

int reserveOfWeek(int week, int weeks)
{
    if (weeks <= 1) return kUsualReserve;
    const double part = static_cast<double>(week) / (weeks - 1);
    return static_cast<int>(std::lround(kFirstReserve - part * (kFirstReserve - kLastReserve)));
}

ProposalWeeks proposalWeeks(const ProposalProblem& made, const PlanAnswer& answer, const ProposalWishes& wishes)
{
    return WeekMaker(made, answer, wishes).run();
}

}  // namespace steelyard
