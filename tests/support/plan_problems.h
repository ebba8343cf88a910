// Made-up plan problems: the size of a real lifter's week, tiny ones that can be tried out whole, and odd ones.
//
//   const PlanProblem problem = typicalPlanProblem(7);       // 30 candidates, 5 days, 12 muscles; the same for the same seed
#pragma once

#include "core/planning/solver/plan_problem.h"
#include "core/base/split_mix.h"

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
    SplitMix m_random;
};

inline PlanProblem typicalPlanProblem(std::uint64_t seed, double minutes = 75)
{
    constexpr int kMuscles = 12;
    constexpr int kCandidates = 30;
    PlanMaker make(seed);
    PlanProblem problem;
    for (const int weekday : {1, 2, 4, 5, 6}) problem.days.push_back({weekday, minutes, 8});
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

// Anything that validates: cramped days, pins that overstep limits, joints to be spared, missing equipment, muscles that
// nothing trains. Up to the given sizes.
inline PlanProblem oddPlanProblem(std::uint64_t seed, int mostCandidates, int mostDays, int mostMuscles)
{
    PlanMaker make(seed);
    PlanProblem problem;
    const int days = 1 + make.below(mostDays);
    for (int weekday = 1; weekday <= 7; ++weekday)
        if (static_cast<int>(problem.days.size()) < days && (make.chance(60) || 7 - weekday < days))
            problem.days.push_back({weekday, make.in(0, 5, 14), make.below(9)});
    const int muscles = 1 + make.below(mostMuscles);
    for (int i = 0; i < muscles; ++i) {
        PlanMuscle muscle{make.in(0, 1, 10), 0, make.in(2, 1, 8), 1 + make.below(4), make.in(0.5, 0.5, 3)};
        muscle.high = muscle.low + make.in(0, 1, 6);
        problem.muscles.push_back(muscle);
    }
    for (int i = make.below(3); i > 0; --i) problem.joints.push_back({make.in(0, 0.25, 5), make.chance(30)});
    problem.limits = {make.below(5), make.below(3), make.below(7)};
    const int candidates = 1 + make.below(mostCandidates);
    for (int i = 0; i < candidates; ++i) {
        PlanCandidate made = make.candidate(make.below(muscles), muscles, static_cast<int>(problem.joints.size()));
        made.group = make.below(candidates);
        made.leastSets = 1 + make.below(2);
        made.mostSets = made.leastSets + make.below(3);
        made.possible = make.chance(90);
        for (int day = 0; day < static_cast<int>(problem.days.size()); ++day)
            if (make.chance(12)) made.pins.push_back({day, make.below(6)});
        problem.candidates.push_back(std::move(made));
    }
    return problem;
}

}  // namespace steelyard::testing_support
