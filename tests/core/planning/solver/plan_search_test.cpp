#include "core/planning/solver/plan_search.h"

#include "core/planning/solver/plan_bound.h"
#include "core/planning/solver/plan_model.h"
#include "tests/support/plan_check.h"
#include "tests/support/plan_problems.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::brokenBeyondPins;
using testing_support::oddPlanProblem;
using testing_support::pinsAlone;
using testing_support::planCost;
using testing_support::typicalPlanProblem;

constexpr double kSame = 1e-6;

// The cost of the best plan that keeps every limit, by trying all.
class EveryPlan {
public:
    explicit EveryPlan(const PlanProblem& problem) : m_problem(problem), m_placed(pinsAlone(problem))
    {
        for (std::size_t i = 0; i < problem.candidates.size(); ++i)
            for (std::size_t day = 0; day < problem.days.size(); ++day)
                if (std::ranges::find(problem.candidates[i].pins, static_cast<int>(day), &PlanPin::day)
                    == problem.candidates[i].pins.end())
                    m_free.push_back({static_cast<int>(i), static_cast<int>(day)});
        tryFrom(0);
    }
    [[nodiscard]] double best() const { return m_best; }
    [[nodiscard]] int kept() const { return m_kept; }

private:
    void tryFrom(std::size_t at)
    {
        if (at == m_free.size()) {
            if (!brokenBeyondPins(m_problem, m_placed).empty()) return;
            ++m_kept;
            m_best = std::min(m_best, planCost(m_problem, m_placed));
            return;
        }
        tryFrom(at + 1);
        const PlanCandidate& one = m_problem.candidates[static_cast<std::size_t>(m_free[at].candidate)];
        for (int sets = one.leastSets; sets <= one.mostSets; ++sets) {
            m_placed.push_back({m_free[at].candidate, m_free[at].day, sets});
            tryFrom(at + 1);
            m_placed.pop_back();
        }
    }

    struct Cell {
        int candidate;
        int day;
    };
    const PlanProblem& m_problem;
    std::vector<PlanSlot> m_placed;
    std::vector<Cell> m_free;
    double m_best = 1e9;
    int m_kept = 0;
};

TEST(PlanSearch, FindsTheBestOfAllPlansOfTinyProblemsAsTheMixedProgramDoes)
{
    int counted = 0;
    for (std::uint64_t seed = 0; seed < 300; ++seed) {
        const PlanProblem problem = oddPlanProblem(seed, 3, 2, 3);
        const EveryPlan every(problem);
        const auto answer = searchPlan(problem, {.steps = 20'000, .seed = seed}, {});
        ASSERT_TRUE(answer) << seed;
        EXPECT_NEAR(answer->cost.total(), every.best(), kSame) << "problem " << seed;
        const auto bound = boundPlan(problem, {.seconds = 20}, {});
        ASSERT_TRUE(bound) << seed;
        ASSERT_TRUE(bound->proven) << "problem " << seed;
        EXPECT_NEAR(bound->found->cost.total(), every.best(), 1e-5) << "problem " << seed;
        counted += every.kept() > 1 ? 1 : 0;
    }
    EXPECT_GT(counted, 150) << "most problems leave a choice";
}

TEST(PlanSearch, KeepsEveryLimitOfTwoThousandProblemsOfAnyKind)
{
    int overstepped = 0;
    int unmet = 0;
    for (std::uint64_t seed = 0; seed < 2'000; ++seed) {
        const PlanProblem problem = oddPlanProblem(seed, 14, 6, 8);
        const auto answer = searchPlan(problem, {.steps = 6'000, .seed = seed}, {});
        ASSERT_TRUE(answer) << seed;
        EXPECT_EQ(brokenBeyondPins(problem, answer->placed), "") << "problem " << seed;
        EXPECT_NEAR(answer->cost.total(), planCost(problem, answer->placed), kSame) << "problem " << seed;
        overstepped += answer->oversteppedByPins.empty() ? 0 : 1;
        unmet += answer->unmet.empty() ? 0 : 1;
    }
    EXPECT_GT(overstepped, 200) << "problems whose pins overstep limits are among them";
    EXPECT_GT(unmet, 200) << "and those with wishes that can't be met";
}

TEST(PlanSearch, AnswersTheSameForTheSameSeedAndHardlyWorseForAnother)
{
    const PlanProblem problem = typicalPlanProblem(3, 50);
    const auto first = searchPlan(problem, {.steps = 200'000, .seed = 5}, {});
    EXPECT_EQ(*first, *searchPlan(problem, {.steps = 200'000, .seed = 5}, {}));
    const auto other = searchPlan(problem, {.steps = 200'000, .seed = 6}, {});
    EXPECT_NEAR(other->cost.total() / first->cost.total(), 1, 0.15);
}

TEST(PlanSearch, KeepsWhatIsFixedAndPlansTheRestAroundIt)
{
    PlanProblem problem = typicalPlanProblem(4);
    const auto before = searchPlan(problem, {.steps = 100'000}, {});
    const PlanSlot moved = before->placed.front();
    auto& candidate = problem.candidates[static_cast<std::size_t>(moved.candidate)];
    candidate.pins = {{moved.day, 0}, {4, 7}};  // off the day it was on; more sets than it would get by itself
    const auto after = searchPlan(problem, {.steps = 100'000, .seed = 1, .start = before->placed}, {});
    EXPECT_EQ(std::ranges::count(after->placed, PlanSlot{moved.candidate, 4, 7, true}), 1);
    const auto onOldDay = [&](const PlanSlot& slot) {
        return slot.candidate == moved.candidate && slot.day == moved.day;
    };
    EXPECT_TRUE(std::ranges::none_of(after->placed, onOldDay));
    EXPECT_EQ(brokenBeyondPins(problem, after->placed), "");
    EXPECT_GT(after->placed.size(), 10U);
}

TEST(PlanSearch, SaysWhichLimitsPinsOverstepByThemselves)
{
    PlanProblem problem;
    problem.days = {{1, 10}, {2, 60}};
    problem.muscles = {{4, 10, 8, 2, 1}};
    problem.limits.backADay = 1;
    problem.joints = {{1, true}};
    PlanCandidate pinned{.shares = {{0, 1}}, .backLoading = 2, .joints = {0}};
    pinned.mostDays = 1;
    pinned.possible = false;
    pinned.pins = {{0, 6}, {1, 1}};
    problem.candidates = {pinned};
    const auto answer = searchPlan(problem, {.steps = 1'000}, {});
    std::vector<PlanLimit> limits;
    for (const OversteppedLimit& one : answer->oversteppedByPins) limits.push_back(one.limit);
    EXPECT_EQ(limits,
              (std::vector{PlanLimit::Minutes, PlanLimit::BackADay, PlanLimit::BackBesideHigh, PlanLimit::BackADay,
                           PlanLimit::BackBesideHigh, PlanLimit::DaysApart, PlanLimit::DaysAWeek, PlanLimit::SetsADay,
                           PlanLimit::Equipment, PlanLimit::SparedJoint}));
}

TEST(PlanSearch, SundayComesBeforeMonday)
{
    PlanProblem problem;
    problem.days = {{1, 60}, {7, 60}};
    problem.muscles = {{8, 20, 20, 2, 1}};
    problem.candidates = {{.shares = {{0, 1}}, .mostSets = 4}};
    const auto answer = searchPlan(problem, {.steps = 5'000}, {});
    ASSERT_EQ(answer->placed.size(), 1U);
    EXPECT_EQ(answer->unmet, (std::vector<UnmetWish>{{PlanWish::Under, 0, 4, {}}}));
    problem.days[1].weekday = 6;
    EXPECT_TRUE(searchPlan(problem, {.steps = 5'000}, {})->unmet.empty());
}

TEST(PlanSearch, TellsOfBetterPlansOnItsWayTheFirstOneSoon)
{
    std::vector<double> heard;
    double share = 0;
    double firstAt = 1;
    const Progress progress([&](double now) { share = now; });
    const auto answer = searchPlan(typicalPlanProblem(2), {.steps = 200'000}, progress, [&](const PlanAnswer& better) {
        if (heard.empty()) firstAt = share;
        heard.push_back(better.cost.total());
    });
    ASSERT_FALSE(heard.empty());
    EXPECT_LT(firstAt, 0.1);
    EXPECT_TRUE(std::ranges::is_sorted(heard, std::greater<>()));
    EXPECT_EQ(heard.back(), answer->cost.total());
    EXPECT_EQ(share, 1);
}

TEST(PlanSearch, StopsWithinTheNextThousandSteps)
{
    std::stop_source stop;
    int reports = 0;
    const Progress progress(
        [&](double) { stop.get_token().stop_requested() ? void(++reports) : void(stop.request_stop()); },
        stop.get_token());
    const auto answer = searchPlan(typicalPlanProblem(1), {.steps = 1'000'000'000}, progress);
    ASSERT_FALSE(answer);
    EXPECT_EQ(answer.error().code, ErrorCode::Cancelled);
    EXPECT_EQ(reports, 0);
}

TEST(PlanSearch, RefusesAProblemThatDoesNotValidate)
{
    PlanProblem problem = typicalPlanProblem(1);
    problem.candidates[3].leastSets = 0;
    EXPECT_EQ(searchPlan(problem, {}, {}).error().code, ErrorCode::Invalid);
    EXPECT_EQ(boundPlan(problem, {}, {}).error().code, ErrorCode::Invalid);
}

TEST(PlanSearch, LeavesDaysEmptyWhenThereIsNothingToChooseFrom)
{
    PlanProblem problem;
    problem.days = {{1, 60}};
    problem.muscles = {{4, 8, 8, 1, 1}};
    const auto answer = searchPlan(problem, {.steps = 1'000}, {});
    EXPECT_TRUE(answer->placed.empty());
    EXPECT_DOUBLE_EQ(answer->cost.of(PlanWish::Under), 4 + 2);
}

}  // namespace
}  // namespace steelyard
