// Chance for draws and simulated trials, the same on every machine (base/split_mix.h).
//
//   TrialRandom random(seed);
//   random.below(6)     == 0..5
//   random.normal()     : standard normal
//
// Normal deviates by the inverse of the distribution function, so that one number makes one deviate.
#pragma once

#include "core/base/split_mix.h"

#include <cstddef>
#include <span>
#include <utility>

namespace steelyard {

class TrialRandom : public SplitMix {
public:
    using SplitMix::SplitMix;

    // Strictly between 0 and 1.
    [[nodiscard]] double uniform() { return (static_cast<double>(next() >> 11) + 0.5) * 0x1p-53; }
    [[nodiscard]] double normal();
    // Every order equally likely.
    template <class T>
    void shuffle(std::span<T> values)
    {
        for (std::size_t left = values.size(); left > 1; --left) std::swap(values[left - 1], values[below(left)]);
    }
};

}  // namespace steelyard
