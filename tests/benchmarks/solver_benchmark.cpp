// How near the search for a week's plan comes to the best that is known, and how soon.
//
//   solver_benchmark [--long SECONDS [PROBLEMS]]
//
// The limit: the least cost that any method finds for that problem, each with SECONDS (20 unless told): the search itself with
// two further seeds, and branch and bound (GLPK); or any of the short runs. The search ends by steps, so the steps of a second
// are measured first, in processor time. Problems are made up, of the size of a real lifter's week: 30 exercises, 5 days,
// 12 muscles; days of 75 minutes leave room, days of 40 don't.
#include "core/planning/solver/plan_bound.h"
#include "core/planning/solver/plan_search.h"
#include "tests/benchmarks/benchmark_support.h"
#include "tests/support/plan_problems.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstring>

namespace steelyard {
namespace {

using benchmark::must;
using benchmark::Stopwatch;
using testing_support::typicalPlanProblem;

constexpr int kSeeds = 20;
constexpr double kMinutes[] = {75, 40};
constexpr std::uint64_t kProblems = 4;

double stepsASecond()
{
    constexpr std::int64_t kSteps = 1'000'000;
    const Stopwatch watch;
    for (const double minutes : kMinutes) (void)must(searchPlan(typicalPlanProblem(1, minutes), {.steps = kSteps}, {}));
    return static_cast<double>(kSteps) * static_cast<double>(std::size(kMinutes)) / watch.processorSeconds();
}

double costOf(const PlanProblem& problem, double steps, std::uint64_t seed)
{
    return must(searchPlan(problem, {.steps = std::llround(steps), .seed = seed}, {})).cost.total();
}

std::vector<double> costsOfSeeds(const PlanProblem& problem, double steps)
{
    std::vector<double> costs;
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) costs.push_back(costOf(problem, steps, seed));
    std::ranges::sort(costs);
    return costs;
}

void compare(std::uint64_t number, double minutes, double aSecond, double longSeconds)
{
    const PlanProblem problem = typicalPlanProblem(number, minutes);
    const auto soon = costsOfSeeds(problem, 0.2 * aSecond);
    const auto later = costsOfSeeds(problem, aSecond);
    const double searched = std::min(costOf(problem, longSeconds * aSecond, kSeeds + 1),
                                     costOf(problem, longSeconds * aSecond, kSeeds + 2));
    const PlanBound bound = must(boundPlan(problem, {.seconds = longSeconds}, {}));
    const double branched = bound.found ? bound.found->cost.total() : NAN;
    double best = std::min({soon.front(), later.front(), searched});
    if (bound.found) best = std::min(best, branched);
    const auto over = [&](double cost) { return 100 * (cost / best - 1); };
    std::printf("%5.0f %7llu %9.3f %7.2f %7.2f %9.2f %7.2f %9.2f %9.2f %9.2f\n", minutes,
                static_cast<unsigned long long>(number), best, over(soon[kSeeds / 2]), over(soon.back()),
                over(later[kSeeds / 2]), over(later.back()), over(searched), over(branched), over(bound.lowest));
    std::fflush(stdout);
}

void compareAll(double longSeconds, std::uint64_t problems)
{
    const double aSecond = stepsASecond();
    std::printf("%.2f million steps a second; %.0f seconds for the long runs; per cent above the best found\n",
                aSecond / 1e6, longSeconds);
    std::printf("%5s %7s %9s %15s %17s %9s %9s %9s\n", "", "", "", "0.2 s", "1 s", "long", "branch", "lower");
    std::printf("%5s %7s %9s %7s %7s %9s %7s %9s %9s %9s\n", "min", "problem", "best", "median", "worst", "median",
                "worst", "search", "& bound", "bound");
    for (const double minutes : kMinutes)
        for (std::uint64_t number = 1; number <= problems; ++number) compare(number, minutes, aSecond, longSeconds);
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    const QCoreApplication app(argc, argv);
    double longSeconds = 20;
    std::uint64_t problems = steelyard::kProblems;
    if (argc >= 3 && std::strcmp(argv[1], "--long") == 0) longSeconds = QByteArray(argv[2]).toDouble();
    if (argc == 4) problems = QByteArray(argv[3]).toULongLong();
    if ((argc != 1 && argc != 3 && argc != 4) || !(longSeconds > 0) || problems == 0) {
        std::fprintf(stderr, "usage: solver_benchmark [--long SECONDS [PROBLEMS]]\n");
        return 2;
    }
    steelyard::compareAll(longSeconds, problems);
}
