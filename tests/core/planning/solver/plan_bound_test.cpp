#include "core/planning/solver/plan_bound.h"

#include "core/planning/solver/plan_search.h"
#include "tests/support/plan_check.h"
#include "tests/support/plan_problems.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::brokenBeyondPins;
using testing_support::oddPlanProblem;
using testing_support::planCost;
using testing_support::typicalPlanProblem;

TEST(PlanBound, IsNeverAboveWhatTheSearchFindsAndItsPlanKeepsEveryLimit)
{
    int proven = 0;
    for (std::uint64_t seed = 1'000; seed < 1'060; ++seed) {
        const PlanProblem problem = oddPlanProblem(seed, 8, 4, 5);
        const auto bound = boundPlan(problem, {.seconds = 1}, {});
        const auto answer = searchPlan(problem, {.steps = 60'000, .seed = seed}, {});
        ASSERT_TRUE(bound && answer) << seed;
        EXPECT_LE(bound->lowest, answer->cost.total() + 1e-5) << "problem " << seed;
        if (bound->found) {
            EXPECT_EQ(brokenBeyondPins(problem, bound->found->placed), "") << "problem " << seed;
            EXPECT_NEAR(bound->found->cost.total(), planCost(problem, bound->found->placed), 1e-6);
            EXPECT_GE(bound->found->cost.total(), bound->lowest - 1e-5) << "problem " << seed;
        }
        if (bound->proven) {
            ++proven;
            EXPECT_NEAR(bound->found->cost.total(), answer->cost.total(), 1e-5) << "problem " << seed;
        }
    }
    EXPECT_GT(proven, 40);
}

TEST(PlanBound, OfARealWeekLiesUnderItsPlan)
{
    const PlanProblem problem = typicalPlanProblem(1, 40);
    const auto bound = boundPlan(problem, {.seconds = 1}, {});
    const auto answer = searchPlan(problem, {.steps = 100'000}, {});
    EXPECT_GT(bound->lowest, 0);
    EXPECT_LT(bound->lowest, answer->cost.total());
    EXPECT_FALSE(bound->proven);
    EXPECT_GT(mostAboveBest(answer->cost.total(), *bound), 0);
}

TEST(PlanBound, IsStatedOnlyWhereItSaysSomething)
{
    EXPECT_NEAR(*mostAboveBest(12, {10, false, {}}), 0.2, 1e-9);
    EXPECT_EQ(mostAboveBest(10, {10, true, {}}), 0.0);
    EXPECT_EQ(mostAboveBest(5, {0, false, {}}), std::nullopt);
    EXPECT_EQ(mostAboveBest(0, {0, false, {}}), 0.0);
}

TEST(PlanBound, StopsWhenAsked)
{
    std::stop_source stop;
    stop.request_stop();
    const auto bound = boundPlan(typicalPlanProblem(1), {.seconds = 100}, Progress({}, stop.get_token()));
    EXPECT_EQ(bound.error().code, ErrorCode::Cancelled);
}

}  // namespace
}  // namespace steelyard
