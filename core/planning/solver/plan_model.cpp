#include "core/planning/solver/plan_model.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace steelyard {
namespace {

int thousandths(double value)
{
    return static_cast<int>(std::lround(value * static_cast<double>(kPlanThousand)));
}

constexpr int kDaysAround = 7;

int daysApart(int weekdayA, int weekdayB)
{
    const int apart = std::abs(weekdayA - weekdayB);
    return std::min(apart, kDaysAround - apart);
}

// Everything that a plan adds up to, day by day and muscle by muscle, in the model's units.
struct PlanSums {
    PlanSums(const PlanModel& model, std::span<const int> setsByCell)
        : weekly(model.bands().size()),
          setsOfDay(static_cast<std::size_t>(model.days())),
          daily(model.bands().size() * static_cast<std::size_t>(model.days()))
    {
        for (int cell = 0; cell < model.cells(); ++cell) {
            const int sets = setsByCell[static_cast<std::size_t>(cell)];
            if (sets == 0) continue;
            ++exercises;
            setsOfDay[static_cast<std::size_t>(model.dayOf(cell))] += sets;
            for (const auto& share : model.candidates()[static_cast<std::size_t>(model.candidateOf(cell))].shares) {
                weekly[static_cast<std::size_t>(share.muscle)] += sets * share.thousandths;
                daily[model.ofDay(share.muscle, model.dayOf(cell))] += sets * share.thousandths;
            }
        }
    }
    std::vector<std::int64_t> weekly;
    std::vector<int> setsOfDay;
    std::vector<std::int64_t> daily;
    int exercises = 0;
};

std::vector<PlanSlot> slotsOf(const PlanModel& model, std::span<const int> setsByCell)
{
    std::vector<PlanSlot> placed;
    for (int day = 0; day < model.days(); ++day)
        for (int candidate = 0; candidate < static_cast<int>(model.candidates().size()); ++candidate) {
            const int cell = model.cell(candidate, day);
            const int sets = setsByCell[static_cast<std::size_t>(cell)];
            if (sets > 0) placed.push_back({candidate, day, sets, model.pinned(cell).has_value()});
        }
    return placed;
}

std::vector<int> setsByCandidate(const PlanProblem& problem, std::span<const PlanSlot> placed)
{
    std::vector<int> sets(problem.candidates.size());
    for (const PlanSlot& slot : placed) sets[static_cast<std::size_t>(slot.candidate)] += slot.sets;
    return sets;
}

double jointSets(const PlanProblem& problem, const PlanCandidate& candidate, int sets)
{
    double complaint = 0;
    for (const int joint : candidate.joints) complaint += problem.joints[static_cast<std::size_t>(joint)].complaint;
    return sets * complaint;
}

PlanCost costOf(const PlanModel& model, std::span<const int> setsByCell)
{
    const PlanProblem& problem = model.problem();
    const PlanSums sums(model, setsByCell);
    std::array<double, kPlanWishes> by{};
    const auto add = [&](PlanWish wish, double points) { by[static_cast<std::size_t>(wish)] += points; };
    for (int muscle = 0; muscle < static_cast<int>(model.bands().size()); ++muscle) {
        const std::int64_t sets = sums.weekly[static_cast<std::size_t>(muscle)];
        const bool isUnder = sets < model.bands()[static_cast<std::size_t>(muscle)].low;
        add(isUnder ? PlanWish::Under : PlanWish::Over,
            kPlanCostUnit * static_cast<double>(model.bandCost(muscle, sets)));
        for (int day = 0; day < model.days(); ++day) {
            const std::int64_t ofDay = sums.daily[model.ofDay(muscle, day)];
            add(PlanWish::Crowding, kPlanCostUnit * static_cast<double>(model.crowdingCost(muscle, ofDay)));
        }
    }
    const auto sets = setsByCandidate(problem, slotsOf(model, setsByCell));
    for (std::size_t i = 0; i < sets.size(); ++i) {
        const PlanCandidate& candidate = problem.candidates[i];
        add(PlanWish::Joints, problem.wishes.joints * jointSets(problem, candidate, sets[i]));
        add(PlanWish::Rating, problem.wishes.rating * sets[i] * (1 - candidate.rating));
        if (sets[i] == 0) add(PlanWish::Continuity, problem.wishes.continuity * candidate.continuity);
    }
    for (int day = 0; day < model.days(); ++day)
        add(PlanWish::Thin,
            kPlanCostUnit * static_cast<double>(model.thinCost(day, sums.setsOfDay[static_cast<std::size_t>(day)])));
    add(PlanWish::Exercises, problem.wishes.exercises * sums.exercises);
    return {by};
}

}  // namespace

PlanModel::PlanModel(const PlanProblem& problem) : m_problem(problem)
{
    readDays();
    readMuscles();
    readCandidates();
    makeRoomForPins();
    findCloseDays();
    m_costOfExercise = std::llround(problem.wishes.exercises / kPlanCostUnit);
    m_costOfMissingSet = std::llround(problem.wishes.thin / kPlanCostUnit);
}

void PlanModel::readDays()
{
    const auto& days = m_problem.days;
    for (const PlanDay& day : days) {
        Day made;
        made.minutes = thousandths(day.minutes);
        made.back = m_problem.limits.backADay;
        made.exercises = m_problem.limits.exercisesADay;
        made.leastSets = day.leastSets;
        made.backBesideHigh = m_problem.limits.backBesideHigh;
        for (int other = 0; other < static_cast<int>(days.size()); ++other) {
            const int weekday = days[static_cast<std::size_t>(other)].weekday;
            if (weekday == day.weekday % kDaysAround + 1) made.next = other;
            if (day.weekday == weekday % kDaysAround + 1) made.previous = other;
        }
        m_days.push_back(made);
    }
}

void PlanModel::readMuscles()
{
    for (const PlanMuscle& muscle : m_problem.muscles) {
        const auto& wishes = m_problem.wishes;
        Band band;
        band.low = thousandths(muscle.low);
        band.half = band.low / 2;
        band.high = thousandths(muscle.high);
        band.mostADay = thousandths(muscle.mostADay);
        band.under = thousandths(wishes.under * muscle.weight);
        band.over = thousandths(wishes.over * muscle.weight);
        band.crowding = thousandths(wishes.crowding * muscle.weight);
        m_bands.push_back(band);
    }
}

void PlanModel::readCandidates()
{
    std::map<int, int> groups;
    m_pinned.resize(m_problem.candidates.size() * m_problem.days.size());
    for (int i = 0; i < static_cast<int>(m_problem.candidates.size()); ++i)
        for (int day = 0; day < days(); ++day) m_places.push_back({i, day});
    for (std::size_t i = 0; i < m_problem.candidates.size(); ++i) {
        const PlanCandidate& from = m_problem.candidates[i];
        Candidate made;
        for (const PlanShare& share : from.shares)
            made.shares.push_back({share.muscle, thousandths(share.share), share.share >= kTargetShare});
        made.group = groups.try_emplace(from.group, static_cast<int>(groups.size())).first->second;
        made.back = from.backLoading;
        made.minutesASet = thousandths(from.minutesASet);
        made.setUp = thousandths(from.setUpMinutes);
        const auto& wishes = m_problem.wishes;
        made.costASet = std::llround((wishes.joints * jointSets(m_problem, from, 1) + wishes.rating * (1 - from.rating))
                                     / kPlanCostUnit);
        made.costOfAbsence = std::llround(wishes.continuity * from.continuity / kPlanCostUnit);
        made.least = from.leastSets;
        made.most = from.mostSets;
        made.mostDays = from.mostDays;
        for (const PlanPin& pin : from.pins)
            m_pinned[static_cast<std::size_t>(cell(static_cast<int>(i), pin.day))] = pin.sets;
        m_candidates.push_back(std::move(made));
        const bool spared = std::ranges::any_of(
            from.joints, [&](int joint) { return m_problem.joints[static_cast<std::size_t>(joint)].spared; });
        if (!from.possible || spared) continue;
        for (int day = 0; day < days(); ++day)
            if (const int at = cell(static_cast<int>(i), day); !pinned(at)) m_open.push_back(at);
    }
    m_groups = static_cast<int>(groups.size());
}

void PlanModel::makeRoomForPins()
{
    struct Used {
        std::int64_t minutes = 0;
        int back = 0;
        int exercises = 0;
        bool high = false;
    };
    std::vector<Used> used(m_days.size());
    std::vector<int> daysOf(m_candidates.size());
    std::vector<int> ofGroup(static_cast<std::size_t>(m_groups * days()));
    for (int cell = 0; cell < cells(); ++cell) {
        const int sets = pinned(cell).value_or(0);
        if (sets == 0) continue;
        const auto i = static_cast<std::size_t>(candidateOf(cell));
        const Candidate& candidate = m_candidates[i];
        Used& day = used[static_cast<std::size_t>(dayOf(cell))];
        day.minutes += candidate.setUp + std::int64_t{sets} * candidate.minutesASet;
        day.back += candidate.back;
        day.high = day.high || candidate.back == kMostBackLoading;
        ++day.exercises;
        ++daysOf[i];
        ++ofGroup[ofDay(candidate.group, dayOf(cell))];
    }
    for (std::size_t i = 0; i < m_candidates.size(); ++i)
        m_candidates[i].mostDays = std::max(m_candidates[i].mostDays, daysOf[i]);
    m_mostOfGroup = std::move(ofGroup);
    for (int& most : m_mostOfGroup) most = std::max(most, 1);
    for (std::size_t d = 0; d < m_days.size(); ++d) {
        Day& day = m_days[d];
        day.minutes = std::max(day.minutes, used[d].minutes);
        day.back = std::max(day.back, used[d].back);
        day.exercises = std::max(day.exercises, used[d].exercises);
        for (const int beside : {day.previous, day.next})
            if (beside >= 0 && used[static_cast<std::size_t>(beside)].high)
                day.backBesideHigh = std::max(day.backBesideHigh, used[d].back);
    }
}

void PlanModel::findCloseDays()
{
    std::vector<unsigned> pinnedTarget(m_bands.size());
    for (int cell = 0; cell < cells(); ++cell)
        if (pinned(cell).value_or(0) > 0)
            for (const Share& share : m_candidates[static_cast<std::size_t>(candidateOf(cell))].shares)
                if (share.target) pinnedTarget[static_cast<std::size_t>(share.muscle)] |= 1U << dayOf(cell);
    for (std::size_t muscle = 0; muscle < m_bands.size(); ++muscle)
        for (int day = 0; day < days(); ++day) {
            unsigned close = 0;
            for (int other = 0; other < days(); ++other) {
                const int apart = daysApart(m_problem.days[static_cast<std::size_t>(day)].weekday,
                                            m_problem.days[static_cast<std::size_t>(other)].weekday);
                if (other != day && apart < m_problem.muscles[muscle].leastDaysApart) close |= 1U << other;
            }
            // Two pinned days stay as they are; nothing that is added makes them any closer.
            if (pinnedTarget[muscle] >> day & 1U) close &= ~pinnedTarget[muscle];
            m_close.push_back(close);
        }
}

std::vector<int> PlanModel::pinnedSets() const
{
    std::vector<int> sets;
    sets.reserve(m_pinned.size());
    for (const auto& pin : m_pinned) sets.push_back(pin.value_or(0));
    return sets;
}

PlanAnswer PlanModel::answerOf(std::span<const int> setsByCell) const
{
    PlanAnswer answer;
    answer.placed = slotsOf(*this, setsByCell);
    answer.cost = costOf(*this, setsByCell);
    answer.oversteppedByPins = oversteppedLimits(m_problem, slotsOf(*this, pinnedSets()));
    answer.unmet = unmetWishes(m_problem, answer.placed);
    return answer;
}

}  // namespace steelyard
