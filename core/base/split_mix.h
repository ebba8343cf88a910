// Random numbers that are the same on every machine; the library's distributions are not.
//
//   SplitMix random(seed);   random.below(6)   == 0..5
//
// SplitMix64: Steele, Lea, Flood 2014, OOPSLA, doi 10.1145/2660193.2660195.
#pragma once

#include <concepts>
#include <cstdint>

namespace steelyard {

class SplitMix {
public:
    explicit SplitMix(std::uint64_t seed) : m_state(seed) {}

    [[nodiscard]] std::uint64_t next()
    {
        std::uint64_t mixed = m_state += 0x9e3779b97f4a7c15ULL;
        mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9ULL;
        mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111ebULL;
        return mixed ^ (mixed >> 31);
    }
    // From 0 up to, but not including, `bound`, which is above 0 and small: the bias, 1 in 2^32 / bound, is of no matter.
    template <std::integral Number>
    [[nodiscard]] Number below(Number bound)
    {
        return static_cast<Number>(((next() >> 32) * static_cast<std::uint64_t>(bound)) >> 32);
    }

private:
    std::uint64_t m_state;
};

}  // namespace steelyard
