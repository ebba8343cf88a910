// Warm-up sets for a working load.
//
//   warmUpSets(*Load::parse(u"100", MassUnit::kg), variant, loads)  ->  50 kg x 8, 70 kg x 4, 85 kg x 2
//
// Common practice, no source: rising loads, falling repetitions, never tiring; one or two steps are enough for a light
// load, and none are needed under kNoWarmUpBelow. For one dumbbell the limits are halved, because two are held.
// Invariants: loads can be set on the implement, rise strictly, and stay under the working load. Steps that fall on
// one load are given once. Assisted work gets none: less help is more load, and the share of it is unknown here.
#pragma once

#include "core/planning/loadable.h"

namespace steelyard {

struct WarmUpSet {
    Load load;
    int reps = 0;
    std::vector<Load> plates;  // as in LoadChoice
};

struct WarmUpStep {
    int percent;
    int reps;
    Mass workingFrom;  // used from this working load on
};

inline constexpr Mass kNoWarmUpBelow = massFromGrams(20'000);
inline constexpr std::array<WarmUpStep, 3> kWarmUpSteps{{
    {50, 8, kNoWarmUpBelow},
    {70, 4, massFromGrams(40'000)},
    {85, 2, massFromGrams(70'000)},
}};

[[nodiscard]] std::vector<WarmUpSet> warmUpSets(const Load& working, const Variant& variant, const LoadFinder& loads);

}  // namespace steelyard
