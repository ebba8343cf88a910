// Random numbers for draws and simulated trials, the same on every machine; the library's distributions are not.
//
//   TrialRandom random(seed);
//   random.below(6)     == 0..5
//   random.normal()     : standard normal
//
// SplitMix64: Steele, Lea, Flood 2014, OOPSLA, doi 10.1145/2660193.2660195. Normal deviates by the inverse of the
// distribution function, so that one number makes one deviate.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <utility>

namespace steelyard {

class TrialRandom {
public:
    explicit TrialRandom(std::uint64_t seed) : m_state(seed) {}

    [[nodiscard]] std::uint64_t next()
    {
        std::uint64_t mixed = m_state += 0x9e3779b97f4a7c15ULL;
        mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9ULL;
        mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111ebULL;
        return mixed ^ (mixed >> 31);
    }
    // From 0 up to, but not including, `bound`, which is above 0 and small: the bias, 1 in 2^32 / bound, is of no matter.
    [[nodiscard]] std::size_t below(std::size_t bound)
    {
        return static_cast<std::size_t>(((next() >> 32) * static_cast<std::uint64_t>(bound)) >> 32);
    }
    // Strictly between 0 and 1.
    [[nodiscard]] double uniform() { return (static_cast<double>(next() >> 11) + 0.5) * 0x1p-53; }
    [[nodiscard]] double normal();
    // Every order equally likely.
    template <class T>
    void shuffle(std::span<T> values)
    {
        for (std::size_t left = values.size(); left > 1; --left) std::swap(values[left - 1], values[below(left)]);
    }

private:
    std::uint64_t m_state;
};

}  // namespace steelyard
