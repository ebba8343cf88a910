// How often chance alone, by the very draw that was made, would have brought arms so far apart.
//
//   const auto test = randomisationTest({.arms = 2, .sessions = sessions});
//   test->p                      == 0.0625     // 16 of the 256 orders that could have been drawn
//
// If no arm did anything, every session would have had the same value whichever arm it was given; so the statistic is worked
// out for every order that could have been drawn, and p is the share of orders with one at least as large. Nothing is assumed
// of the values' distribution. Up to kMostOrdersCounted orders all are counted, beyond that 20,000 seeded draws stand for
// them, with the order that was drawn counted among them.
//
// Sessions without a value stay in the draw and out of the statistic. The statistic of two arms is their difference after a
// straight trend over the sessions is taken out (two-sided); of more arms, the sum over arms of their sessions times the
// squared mean of what the trend leaves.
//
// Units: none. Failures: fewer than two arms with a value, or blocks that don't hold each arm at most once: nullopt.
// Source: Fisher 1935, The Design of Experiments, chapter 3; Kravitz & Duan (eds) 2014, AHRQ 13(14)-EHC122, chapter 4.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace steelyard {

inline constexpr double kMostOrdersCounted = 4096;  // 2^12
inline constexpr int kOrdersDrawn = 20'000;

struct DrawnSession {
    int block = 1;
    std::size_t arm = 0;          // as drawn
    std::optional<double> value;  // absent: missed, or not rated
};

struct RandomisationQuestion {
    std::size_t arms = 2;
    std::vector<DrawnSession> sessions;  // by date
    bool trend = true;                   // taken out
    bool ranks = false;                  // only the order of the values counts; equal ones share the mean rank
    std::uint64_t seed = 1;              // of the draws, where not all orders are counted
    double mostCounted = kMostOrdersCounted;
};

struct RandomisationAnswer {
    double statistic = 0;  // two arms: arm 1 less arm 0
    double p = 1;
    double orders = 0;     // looked at
    double asExtreme = 0;  // of these
    bool exact = false;    // all that could have been drawn were
};

[[nodiscard]] std::optional<RandomisationAnswer> randomisationTest(const RandomisationQuestion&);

}  // namespace steelyard
