#include "core/planning/solver/plan_obstacles.h"

#include "core/planning/solver/plan_relaxation.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

// How much of what is missing has to be had, and how much of its worth the whole plan has to gain.
constexpr double kHelps = 0.5;

double missingOf(const PlanAnswer& answer, const UnmetWish& wish)
{
    const auto same = [&](const UnmetWish& other) { return other.wish == wish.wish && other.index == wish.index; };
    const auto found = std::ranges::find_if(answer.unmet, same);
    return found == answer.unmet.end() ? 0 : found->missing;
}

// Points that so much missing costs.
double pointsMissed(const PlanProblem& problem, const UnmetWish& wish, double missing)
{
    const auto index = static_cast<std::size_t>(wish.index);
    switch (wish.wish) {
    case PlanWish::Under: {
        const PlanMuscle& muscle = problem.muscles[index];
        return problem.wishes.under * muscle.weight * (missing + std::max(0.0, missing - muscle.low / 2));
    }
    case PlanWish::Over:
        return problem.wishes.over * problem.muscles[index].weight * missing;
    case PlanWish::Crowding:
        return problem.wishes.crowding * problem.muscles[index].weight * missing;
    case PlanWish::Joints:
        return problem.wishes.joints * problem.joints[index].complaint * missing;
    case PlanWish::Continuity:
        return problem.wishes.continuity * problem.candidates[index].continuity * missing;
    case PlanWish::Thin:
        return problem.wishes.thin * missing;
    case PlanWish::Rating:
    case PlanWish::Exercises:
        break;
    }
    return 0;
}

bool canServe(const PlanProblem& problem, const UnmetWish& wish)
{
    if (wish.wish != PlanWish::Under) return true;
    return std::ranges::any_of(problem.candidates, [&](const PlanCandidate& candidate) {
        return std::ranges::any_of(candidate.shares,
                                   [&](const PlanShare& share) { return share.muscle == wish.index; });
    });
}

class ObstacleFinder {
public:
    ObstacleFinder(const PlanProblem& problem, const PlanSolveOptions& options, const Progress& progress)
        : m_problem(problem), m_options(options), m_progress(progress)
    {}

    [[nodiscard]] Result<PlanAnswer> run(PlanAnswer answer)
    {
        m_questions = 1 + static_cast<double>(EnumText<PlanLimit>::table.size() + answer.unmet.size());
        STEELYARD_TRY(PlanAnswer again, ask(m_problem, answer.placed));
        m_answer = again.cost.total() < answer.cost.total() ? std::move(again) : std::move(answer);
        if (m_answer.unmet.empty()) return std::move(m_answer);
        for (const auto& row : EnumText<PlanLimit>::table)
            if (const auto relaxed = without(m_problem, row.value)) STEELYARD_CHECK(lift(row.value, *relaxed));
        for (UnmetWish& wish : m_answer.unmet) STEELYARD_CHECK(finish(wish));
        m_progress.report(1);
        return std::move(m_answer);
    }

private:
    [[nodiscard]] Result<PlanAnswer> ask(const PlanProblem& problem, const std::vector<PlanSlot>& start)
    {
        const double from = std::min(1.0, m_asked / m_questions);
        m_asked += 1;
        return searchPlan(problem, {m_options.stepsALimit, m_options.seed, start},
                          m_progress.part(from, std::min(1.0, m_asked / m_questions)));
    }
    [[nodiscard]] Result<> lift(PlanLimit limit, const RelaxedPlan& relaxed);
    [[nodiscard]] Result<> finish(UnmetWish& wish);

    const PlanProblem& m_problem;
    const PlanSolveOptions& m_options;
    const Progress& m_progress;
    PlanAnswer m_answer;
    double m_questions = 1;
    double m_asked = 0;
};

Result<> ObstacleFinder::lift(PlanLimit limit, const RelaxedPlan& relaxed)
{
    auto start = m_answer.placed;
    for (PlanSlot& slot : start) slot.day = relaxed.dayOf(slot.day);
    STEELYARD_TRY(const PlanAnswer freer, ask(relaxed.problem, start));
    const double gain = m_answer.cost.total() - freer.cost.total();
    for (UnmetWish& wish : m_answer.unmet) {
        const double missing = missingOf(freer, wish);
        const double worth = pointsMissed(m_problem, wish, wish.missing) - pointsMissed(m_problem, wish, missing);
        if (missing <= kHelps * wish.missing && gain > 0 && gain >= kHelps * worth)
            wish.inTheWay.push_back({limit, missing});
    }
    return {};
}

Result<> ObstacleFinder::finish(UnmetWish& wish)
{
    if (!canServe(m_problem, wish)) {
        wish.inTheWay = {{PlanLimit::NoCandidate, wish.missing}};
        return {};
    }
    STEELYARD_TRY(const PlanAnswer dear, ask(withEmphasis(m_problem, wish), m_answer.placed));
    if (const double missing = missingOf(dear, wish); missing <= kHelps * wish.missing)
        wish.inTheWay.push_back({PlanLimit::OtherWishes, missing});
    std::ranges::stable_sort(wish.inTheWay, {}, &PlanObstacle::missingWithout);
    return {};
}

}  // namespace

Result<PlanAnswer> withObstacles(const PlanProblem& problem, const PlanAnswer& answer, const PlanSolveOptions& options,
                                 const Progress& progress)
{
    return ObstacleFinder(problem, options, progress).run(answer);
}

Result<PlanAnswer> solvePlan(const PlanProblem& problem, const PlanSolveOptions& options, const Progress& progress)
{
    constexpr double kSearchShare = 0.6;
    STEELYARD_TRY(const PlanAnswer answer,
                  searchPlan(problem, {options.steps, options.seed, {}}, progress.part(0, kSearchShare)));
    return withObstacles(problem, answer, options, progress.part(kSearchShare, 1));
}

}  // namespace steelyard
