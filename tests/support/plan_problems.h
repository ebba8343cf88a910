// Made-up plan problems: the size of a real lifter's week, tiny ones that can be tried out whole, and odd ones.
//
//   const PlanProblem problem = typicalPlanProblem(7);       // 30 candidates, 5 days, 12 muscles; the same for the same seed
#pragma once

#include "core/planning/solver/plan_problem.h"
#include "core/planning/solver/plan_random.h"

#include <algorithm>

namespace steelyard::testing_support {

class PlanMaker {
public:
    explicit PlanMaker(std::uint64_t seed) : m_random(seed * 7'919 + 17) {}

    [[nodiscard]] int below(int bound) { return m_random.below(bound); }
    [[nodiscard]] bool chance(int percent) { return below(100) < percent; }
    // From `low` in steps, each as likely.
    [[nodiscard]] double in(double low, double step, int steps) { return low + step * below(steps); }

    [[nodiscard]] PlanCandidate candidate(int target, int muscles, int joints)
    {
        PlanCandidate made;
        made.shares.push_back({target, 1.0});
        for (int helpers = below(3); helpers > 0; --helpers) {
            const int muscle = below(muscles);
            const auto same = [&](const PlanShare& share) { return share.muscle == muscle; };
            if (std::ranges::none_of(made.shares, same)) made.shares.push_back({muscle, chance(60) ? 0.5 : 0.25});
        }
        const int back = below(100);
        made.backLoading = back < 60 ? 0 : back < 85 ? 1 : 2;
        made.minutesASet = in(2, 0.25, 7);
        made.setUpMinutes = in(1, 0.5, 6);
        if (joints > 0 && chance(40)) made.joints.push_back(below(joints));
        made.rating = in(0, 0.1, 11);
        made.continuity = chance(20) ? 1 : 0;
        made.mostDays = 1 + below(2);
        return made;
    }

private:
    PlanRandom m_random;
};

inline PlanProblem typicalPlanProblem(std::uint64_t seed, double minutes = 75)
{
    constexpr int kMuscles = 12;
    constexpr int kCandidates = 30;
    PlanMaker make(seed);
    PlanProblem problem;
    for (const int weekday : {1, 2, 4, 5, 6}) problem.days.push_back({weekday, minutes});
    for (int i = 0; i < kMuscles; ++i) {
        PlanMuscle muscle;
        muscle.low = make.in(6, 1, 7);
        muscle.high = muscle.low + make.in(3, 1, 4);
        muscle.mostADay = 7;
        problem.muscles.push_back(muscle);
    }
    problem.joints = {{0.5, false}, {0, false}, {0.3, false}, {0, false}};
    for (int i = 0; i < kCandidates; ++i) {
        problem.candidates.push_back(make.candidate(i % kMuscles, kMuscles, 4));
        problem.candidates.back().group = i % 22;  // some are two ways of one exercise
    }
    return problem;
}

}  // namespace steelyard::testing_support
