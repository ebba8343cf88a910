// Limits and wishes of a plan, read off the problem as it is stated.
#include "core/planning/solver/plan_model.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

// Shares have three decimals; anything under half of the last is no difference.
constexpr double kNoSets = 0.0005;
constexpr int kWeekLong = 7;

class LimitReader {
public:
    LimitReader(const PlanProblem& problem, std::span<const PlanSlot> placed) : m_problem(problem), m_placed(placed) {}

    [[nodiscard]] std::vector<OversteppedLimit> run()
    {
        for (int day = 0; day < static_cast<int>(m_problem.days.size()); ++day) readDay(day);
        for (int muscle = 0; muscle < static_cast<int>(m_problem.muscles.size()); ++muscle) readMuscle(muscle);
        for (int candidate = 0; candidate < static_cast<int>(m_problem.candidates.size()); ++candidate)
            readCandidate(candidate);
        return std::move(m_found);
    }

private:
    [[nodiscard]] const PlanCandidate& candidateOf(const PlanSlot& slot) const
    {
        return m_problem.candidates[static_cast<std::size_t>(slot.candidate)];
    }
    [[nodiscard]] int weekday(int day) const { return m_problem.days[static_cast<std::size_t>(day)].weekday; }
    [[nodiscard]] int backOf(int day) const
    {
        int back = 0;
        for (const PlanSlot& slot : m_placed)
            if (slot.day == day) back += candidateOf(slot).backLoading;
        return back;
    }
    [[nodiscard]] bool holdsHighBack(int day) const
    {
        return std::ranges::any_of(m_placed, [&](const PlanSlot& slot) {
            return slot.day == day && candidateOf(slot).backLoading == kMostBackLoading;
        });
    }
    [[nodiscard]] bool targets(int day, int muscle) const
    {
        return std::ranges::any_of(m_placed, [&](const PlanSlot& slot) {
            return slot.day == day && std::ranges::any_of(candidateOf(slot).shares, [&](const PlanShare& share) {
                       return share.muscle == muscle && share.share >= kTargetShare;
                   });
        });
    }
    void readDay(int day);
    void readMuscle(int muscle);
    void readCandidate(int candidate);

    const PlanProblem& m_problem;
    std::span<const PlanSlot> m_placed;
    std::vector<OversteppedLimit> m_found;
};

void LimitReader::readDay(int day)
{
    double minutes = 0;
    int exercises = 0;
    bool twoOfAGroup = false;
    for (const PlanSlot& slot : m_placed) {
        if (slot.day != day) continue;
        const PlanCandidate& candidate = candidateOf(slot);
        minutes += candidate.setUpMinutes + slot.sets * candidate.minutesASet;
        ++exercises;
        for (const PlanSlot& other : m_placed)
            if (other.day == day && other.candidate != slot.candidate && candidateOf(other).group == candidate.group)
                twoOfAGroup = true;
    }
    const auto add = [&](PlanLimit limit) { m_found.push_back({limit, day, {}, {}}); };
    if (minutes > m_problem.days[static_cast<std::size_t>(day)].minutes + kNoSets) add(PlanLimit::Minutes);
    if (backOf(day) > m_problem.limits.backADay) add(PlanLimit::BackADay);
    if (exercises > m_problem.limits.exercisesADay) add(PlanLimit::ExercisesADay);
    if (twoOfAGroup) add(PlanLimit::OneOfAGroup);
    for (int other = 0; other < static_cast<int>(m_problem.days.size()); ++other) {
        const bool beside =
            weekday(other) == weekday(day) % kWeekLong + 1 || weekday(day) == weekday(other) % kWeekLong + 1;
        if (!beside || !holdsHighBack(other) || backOf(day) <= m_problem.limits.backBesideHigh) continue;
        add(PlanLimit::BackBesideHigh);
        break;
    }
}

void LimitReader::readMuscle(int muscle)
{
    for (int day = 0; day < static_cast<int>(m_problem.days.size()); ++day)
        for (int other = day + 1; other < static_cast<int>(m_problem.days.size()); ++other) {
            const int apart = weekday(other) - weekday(day);
            if (std::min(apart, kWeekLong - apart) < m_problem.muscles[static_cast<std::size_t>(muscle)].leastDaysApart
                && targets(day, muscle) && targets(other, muscle))
                m_found.push_back({PlanLimit::DaysApart, day, muscle, {}});
        }
}

void LimitReader::readCandidate(int candidate)
{
    const PlanCandidate& one = m_problem.candidates[static_cast<std::size_t>(candidate)];
    std::optional<int> first;
    int daysOf = 0;
    bool oddSets = false;
    for (const PlanSlot& slot : m_placed) {
        if (slot.candidate != candidate) continue;
        if (!first) first = slot.day;
        ++daysOf;
        oddSets = oddSets || slot.sets < one.leastSets || slot.sets > one.mostSets;
    }
    if (!first) return;
    const auto add = [&](PlanLimit limit) { m_found.push_back({limit, *first, {}, candidate}); };
    if (daysOf > one.mostDays) add(PlanLimit::DaysAWeek);
    if (oddSets) add(PlanLimit::SetsADay);
    if (!one.possible) add(PlanLimit::Equipment);
    if (std::ranges::any_of(one.joints,
                            [&](int joint) { return m_problem.joints[static_cast<std::size_t>(joint)].spared; }))
        add(PlanLimit::SparedJoint);
}

struct MuscleWeek {
    double sets = 0;
    double crowded = 0;
};

MuscleWeek muscleWeekOf(const PlanProblem& problem, std::span<const PlanSlot> placed, int muscle)
{
    std::vector<double> daily(problem.days.size());
    for (const PlanSlot& slot : placed)
        for (const PlanShare& share : problem.candidates[static_cast<std::size_t>(slot.candidate)].shares)
            if (share.muscle == muscle) daily[static_cast<std::size_t>(slot.day)] += slot.sets * share.share;
    MuscleWeek week;
    const double most = problem.muscles[static_cast<std::size_t>(muscle)].mostADay;
    for (const double sets : daily) {
        week.sets += sets;
        week.crowded += std::max(0.0, sets - most);
    }
    return week;
}

}  // namespace

std::vector<OversteppedLimit> oversteppedLimits(const PlanProblem& problem, std::span<const PlanSlot> placed)
{
    return LimitReader(problem, placed).run();
}

std::vector<UnmetWish> unmetWishes(const PlanProblem& problem, std::span<const PlanSlot> placed)
{
    std::vector<UnmetWish> unmet;
    const auto add = [&](PlanWish wish, int index, double missing) {
        if (missing > kNoSets) unmet.push_back({wish, index, missing, {}});
    };
    for (int muscle = 0; muscle < static_cast<int>(problem.muscles.size()); ++muscle) {
        const PlanMuscle& band = problem.muscles[static_cast<std::size_t>(muscle)];
        const MuscleWeek week = muscleWeekOf(problem, placed, muscle);
        add(PlanWish::Under, muscle, band.low - week.sets);
        add(PlanWish::Over, muscle, week.sets - band.high);
        add(PlanWish::Crowding, muscle, week.crowded);
    }
    for (int day = 0; day < static_cast<int>(problem.days.size()); ++day) {
        int sets = 0;
        for (const PlanSlot& slot : placed) sets += slot.day == day ? slot.sets : 0;
        add(PlanWish::Thin, day, problem.days[static_cast<std::size_t>(day)].leastSets - sets);
    }
    std::vector<double> strained(problem.joints.size());
    std::vector<bool> stands(problem.candidates.size());
    for (const PlanSlot& slot : placed) {
        stands[static_cast<std::size_t>(slot.candidate)] = true;
        for (const int joint : problem.candidates[static_cast<std::size_t>(slot.candidate)].joints)
            if (problem.joints[static_cast<std::size_t>(joint)].complaint > 0)
                strained[static_cast<std::size_t>(joint)] += slot.sets;
    }
    for (int joint = 0; joint < static_cast<int>(strained.size()); ++joint)
        add(PlanWish::Joints, joint, strained[static_cast<std::size_t>(joint)]);
    for (int candidate = 0; candidate < static_cast<int>(stands.size()); ++candidate)
        if (!stands[static_cast<std::size_t>(candidate)]
            && problem.candidates[static_cast<std::size_t>(candidate)].continuity > 0)
            add(PlanWish::Continuity, candidate, 1);
    return unmet;
}

}  // namespace steelyard
