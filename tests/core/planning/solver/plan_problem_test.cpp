#include "core/planning/solver/plan_problem.h"

#include "tests/support/plan_problems.h"

#include <gtest/gtest.h>

#include <functional>
#include <limits>

namespace steelyard {
namespace {

using testing_support::oddPlanProblem;
using testing_support::typicalPlanProblem;

TEST(PlanProblem, OfARealWeekValidates)
{
    EXPECT_TRUE(validate(typicalPlanProblem(1)).empty());
}

TEST(PlanProblem, SaysWhichFieldKeepsItFromBeingAsked)
{
    struct Spoilt {
        const char* field;
        std::function<void(PlanProblem&)> spoil;
    };
    const double nothing = std::numeric_limits<double>::quiet_NaN();
    const Spoilt cases[] = {
        {"days", [](PlanProblem& p) { p.days.clear(); }},
        {"days", [](PlanProblem& p) { std::swap(p.days[0], p.days[1]); }},
        {"days", [](PlanProblem& p) { p.days[1].weekday = p.days[0].weekday; }},
        {"days", [](PlanProblem& p) { p.days.back().weekday = 8; }},
        {"days", [](PlanProblem& p) { p.days[0].leastSets = -1; }},
        {"minutes", [](PlanProblem& p) { p.days[0].minutes = -1; }},
        {"minutes", [=](PlanProblem& p) { p.days[0].minutes = nothing; }},
        {"muscles", [](PlanProblem& p) { p.muscles[0].high = p.muscles[0].low - 1; }},
        {"muscles", [](PlanProblem& p) { p.muscles[0].leastDaysApart = 0; }},
        {"muscles", [=](PlanProblem& p) { p.muscles[0].weight = nothing; }},
        {"joints", [](PlanProblem& p) { p.joints[0].complaint = 1.5; }},
        {"wishes", [](PlanProblem& p) { p.wishes.under = -1; }},
        {"limits", [](PlanProblem& p) { p.limits.backADay = -1; }},
        {"candidates", [](PlanProblem& p) { p.candidates.resize(kMostPlanCandidates + 1); }},
        {"shares",
         [](PlanProblem& p) {
             p.candidates[0].shares = {{99, 1}};
         }},
        {"shares",
         [](PlanProblem& p) {
             p.candidates[0].shares = {{0, 1}, {0, 0.5}};
         }},
        {"shares",
         [](PlanProblem& p) {
             p.candidates[0].shares = {{0, 0}};
         }},
        {"joints", [](PlanProblem& p) { p.candidates[0].joints = {-1}; }},
        {"group", [](PlanProblem& p) { p.candidates[0].group = -1; }},
        {"backLoading", [](PlanProblem& p) { p.candidates[0].backLoading = 3; }},
        {"minutes", [](PlanProblem& p) { p.candidates[0].minutesASet = -1; }},
        {"rating", [](PlanProblem& p) { p.candidates[0].rating = 2; }},
        {"sets", [](PlanProblem& p) { p.candidates[0].mostSets = 1; }},
        {"mostDays", [](PlanProblem& p) { p.candidates[0].mostDays = 8; }},
        {"pins",
         [](PlanProblem& p) {
             p.candidates[0].pins = {{5, 3}};
         }},
        {"pins",
         [](PlanProblem& p) {
             p.candidates[0].pins = {{0, 3}, {0, 2}};
         }},
        {"pins",
         [](PlanProblem& p) {
             p.candidates[0].pins = {{0, 31}};
         }},
    };
    int number = 0;
    for (const Spoilt& one : cases) {
        PlanProblem problem = typicalPlanProblem(1);
        one.spoil(problem);
        const Problems found = validate(problem);
        ASSERT_EQ(found.size(), 1U) << one.field << " in case " << number;
        EXPECT_EQ(found[0].field, QString::fromLatin1(one.field)) << "in case " << number;
        EXPECT_FALSE(found[0].text.isEmpty());
        ++number;
    }
}

TEST(PlanProblem, OfTheOddKindValidatesToo)
{
    for (std::uint64_t seed = 0; seed < 500; ++seed) EXPECT_TRUE(validate(oddPlanProblem(seed, 12, 6, 8)).empty());
}

}  // namespace
}  // namespace steelyard
