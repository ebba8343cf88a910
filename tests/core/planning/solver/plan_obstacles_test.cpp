#include "core/planning/solver/plan_obstacles.h"

#include "core/planning/solver/plan_relaxation.h"
#include "tests/support/plan_check.h"
#include "tests/support/plan_problems.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

constexpr PlanSolveOptions kQuick{.steps = 20'000, .stepsALimit = 20'000, .seed = 1};

// One muscle, one exercise, time and days enough: nothing is missing until a test takes something away.
PlanProblem roomyWeek()
{
    PlanProblem problem;
    problem.days = {{1, 60}, {4, 60}};
    problem.muscles = {{8, 16, 8, 2, 1}};
    problem.joints = {{0, false}};
    problem.candidates = {{.shares = {{0, 1}}, .backLoading = 1, .minutesASet = 3, .setUpMinutes = 2, .joints = {0}}};
    return problem;
}

std::vector<PlanLimit> limitsInTheWay(const PlanProblem& problem, PlanWish wish = PlanWish::Under, int index = 0)
{
    const auto answer = solvePlan(problem, kQuick, {});
    std::vector<PlanLimit> limits;
    for (const UnmetWish& unmet : answer->unmet)
        if (unmet.wish == wish && unmet.index == index)
            for (const PlanObstacle& obstacle : unmet.inTheWay) limits.push_back(obstacle.limit);
    std::ranges::sort(limits);
    return limits;
}

TEST(PlanObstacles, ThereAreNoneWhereNothingIsMissing)
{
    const auto answer = solvePlan(roomyWeek(), kQuick, {});
    EXPECT_TRUE(answer->unmet.empty());
}

TEST(PlanObstacles, EachLimitIsFoundWhereItAloneIsInTheWay)
{
    struct Cramped {
        PlanLimit limit;
        std::function<void(PlanProblem&)> cramp;
    };
    const Cramped cases[] = {
        {PlanLimit::Minutes,
         [](PlanProblem& p) {
             p.days = {{1, 9}, {4, 9}};
         }},
        {PlanLimit::BackADay, [](PlanProblem& p) { p.limits.backADay = 0; }},
        {PlanLimit::ExercisesADay, [](PlanProblem& p) { p.limits.exercisesADay = 0; }},
        {PlanLimit::DaysAWeek, [](PlanProblem& p) { p.candidates[0].mostDays = 0; }},
        {PlanLimit::SparedJoint, [](PlanProblem& p) { p.joints[0].spared = true; }},
        {PlanLimit::Equipment, [](PlanProblem& p) { p.candidates[0].possible = false; }},
        {PlanLimit::Pins,
         [](PlanProblem& p) {
             p.candidates[0].pins = {{0, 0}, {1, 0}};
         }},
    };
    for (const Cramped& one : cases) {
        PlanProblem problem = roomyWeek();
        one.cramp(problem);
        if (one.limit == PlanLimit::Pins) problem.candidates[0].mostDays = 2;
        const auto limits = limitsInTheWay(problem);
        EXPECT_NE(std::ranges::find(limits, one.limit), limits.end()) << key(one.limit);
        // One more day of nine minutes is of use as well, and so it is where fixed days are closed.
        for (const PlanLimit other : limits)
            EXPECT_TRUE(other == one.limit || other == PlanLimit::TrainingDays) << key(one.limit) << key(other);
    }
}

TEST(PlanObstacles, SetsADayAndAFurtherDayBothHelpWhereOneDayIsAllThereIs)
{
    PlanProblem problem = roomyWeek();
    problem.days.pop_back();
    problem.muscles[0].mostADay = 20;
    problem.candidates[0].mostSets = 4;
    EXPECT_EQ(limitsInTheWay(problem), (std::vector{PlanLimit::SetsADay, PlanLimit::TrainingDays}));
}

TEST(PlanObstacles, DaysApartAndAnotherDayHelpWhereDaysFollowEachOther)
{
    PlanProblem problem = roomyWeek();
    problem.days = {{1, 14}, {2, 14}};  // four sets each
    EXPECT_EQ(limitsInTheWay(problem), (std::vector{PlanLimit::DaysApart, PlanLimit::TrainingDays}));
}

TEST(PlanObstacles, TheDayBesideAHeavyBackIsFound)
{
    PlanProblem problem = roomyWeek();
    problem.days = {{1, 60}, {2, 60}};
    problem.muscles = {{4, 8, 8, 1, 1}, {4, 8, 8, 1, 1}};
    problem.limits = {2, 0, 8};
    problem.candidates = {{.shares = {{0, 1}}, .backLoading = 2, .mostDays = 1},
                          {.shares = {{1, 1}}, .group = 1, .backLoading = 1, .mostDays = 1}};
    problem.candidates[0].pins = {{1, 4}};
    problem.candidates[1].pins = {{1, 0}};
    EXPECT_EQ(limitsInTheWay(problem, PlanWish::Under, 1),
              (std::vector{PlanLimit::BackBesideHigh, PlanLimit::TrainingDays}));
}

TEST(PlanObstacles, TwoWaysOfOneExerciseAreFound)
{
    PlanProblem problem = roomyWeek();
    problem.days.pop_back();
    problem.muscles[0].mostADay = 20;
    problem.candidates[0].mostSets = 4;
    problem.candidates[0].backLoading = 0;
    problem.candidates.push_back(problem.candidates[0]);
    EXPECT_EQ(limitsInTheWay(problem),
              (std::vector{PlanLimit::OneOfAGroup, PlanLimit::SetsADay, PlanLimit::TrainingDays}));
}

TEST(PlanObstacles, AWishThatOthersOutweighIsSaidSo)
{
    PlanProblem problem = roomyWeek();
    problem.joints[0].complaint = 0.5;
    problem.wishes.joints = 10;  // to be spared is worth more than the muscle
    EXPECT_EQ(limitsInTheWay(problem), (std::vector{PlanLimit::OtherWishes}));
}

TEST(PlanObstacles, AMuscleThatNothingTrainsIsSaidSo)
{
    PlanProblem problem = roomyWeek();
    problem.muscles.push_back({4, 8, 8, 1, 1});
    EXPECT_EQ(limitsInTheWay(problem, PlanWish::Under, 1), (std::vector{PlanLimit::NoCandidate}));
}

TEST(PlanObstacles, NoOneLimitIsBlamedWhereTwoHaveToGive)
{
    PlanProblem problem = roomyWeek();
    problem.candidates[0].possible = false;
    problem.joints[0].spared = true;
    EXPECT_TRUE(limitsInTheWay(problem).empty());
}

TEST(PlanObstacles, TwoMusclesThatTradeTheirSetsBlameTheMinutesAlone)
{
    PlanProblem problem = roomyWeek();
    problem.days = {{1, 20}, {4, 20}};
    problem.muscles = {{8, 10, 8, 1, 1}, {8, 10, 8, 1, 1}};
    problem.candidates = {{.shares = {{0, 1}}, .group = 0}, {.shares = {{1, 1}}, .group = 1}};
    const auto answer = solvePlan(problem, kQuick, {});
    ASSERT_FALSE(answer->unmet.empty());
    for (const UnmetWish& unmet : answer->unmet)
        for (const PlanObstacle& obstacle : unmet.inTheWay)
            EXPECT_TRUE(obstacle.limit == PlanLimit::Minutes || obstacle.limit == PlanLimit::TrainingDays
                        || obstacle.limit == PlanLimit::OtherWishes)
                << key(obstacle.limit);
}

TEST(PlanRelaxation, OfALimitThatIsNotThereIsNone)
{
    PlanProblem problem = roomyWeek();
    for (const PlanLimit limit :
         {PlanLimit::OneOfAGroup, PlanLimit::SparedJoint, PlanLimit::Equipment, PlanLimit::Pins})
        EXPECT_FALSE(without(problem, limit)) << key(limit);
    EXPECT_TRUE(without(problem, PlanLimit::Minutes));
}

TEST(PlanRelaxation, AFurtherDayStandsInItsPlaceAndPinsMoveWithTheirDay)
{
    PlanProblem problem = roomyWeek();
    problem.days = {{1, 40}, {5, 60}};
    problem.candidates[0].pins = {{1, 3}};
    const auto relaxed = without(problem, PlanLimit::TrainingDays);
    ASSERT_EQ(relaxed->newDay, 1);
    EXPECT_EQ(relaxed->problem.days, (std::vector<PlanDay>{{1, 40}, {3, 50}, {5, 60}}));
    EXPECT_EQ(relaxed->problem.candidates[0].pins, (std::vector<PlanPin>{{2, 3}}));
    EXPECT_EQ(relaxed->dayOf(0), 0);
    EXPECT_EQ(relaxed->dayOf(1), 2);
}

TEST(PlanObstacles, AreFoundWithinEveryLimitOfARealWeek)
{
    const PlanProblem problem = testing_support::typicalPlanProblem(6, 40);
    const auto answer = solvePlan(problem, {.steps = 60'000, .stepsALimit = 20'000, .seed = 1}, {});
    EXPECT_EQ(testing_support::brokenBeyondPins(problem, answer->placed), "");
    EXPECT_FALSE(answer->unmet.empty());
    EXPECT_EQ(*answer, *solvePlan(problem, {.steps = 60'000, .stepsALimit = 20'000, .seed = 1}, {}));
}

TEST(PlanObstacles, StopWhenAsked)
{
    std::stop_source stop;
    const Progress progress(
        [&](double share) {
            if (share > 0.7) stop.request_stop();
        },
        stop.get_token());
    const auto answer = solvePlan(testing_support::typicalPlanProblem(6, 40), kQuick, progress);
    ASSERT_FALSE(answer);
    EXPECT_EQ(answer.error().code, ErrorCode::Cancelled);
}

}  // namespace
}  // namespace steelyard
