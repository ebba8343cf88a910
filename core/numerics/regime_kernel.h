// The loops of the regime filter that take its time, for float and double, for processors with and without wide
// registers. Used by regime_filter.cpp only.
//
// A filter of n hypotheses is 27 rows of n numbers: 6 means (a b u d lambda phi), then the upper triangle of the
// covariance by rows. n is a multiple of kLaneWidth<Real> for every regime.
#pragma once

#include "core/numerics/regime_filter.h"

namespace steelyard {

inline constexpr std::size_t kRegimeRows = kRegimeStates + kRegimeStates * (kRegimeStates + 1) / 2;

// Row of covariance (i, j), i <= j.
[[nodiscard]] constexpr std::size_t covarianceRow(std::size_t i, std::size_t j)
{
    return kRegimeStates + i * kRegimeStates - i * (i + 1) / 2 + j;
}

// The hypotheses of a filter, which belong to the caller.
template <class Real>
struct RegimeMixture {
    Real* values = nullptr;
    Real* logWeights = nullptr;
    Real* weights = nullptr;
    std::size_t lanes = 0;  // n
};

struct RegimeExpectation {
    double mean = 0;
    double variance = 0;
};

// Of `g` times the state, over the mixture.
template <class Real>
[[nodiscard]] RegimeExpectation expectRegimes(const RegimeMixture<const Real>&,
                                              const std::array<double, kRegimeStates>& g);

// What passes between two sessions.
struct RegimeStep {
    double growWeeks = 0;      // weeks over which b acts
    double levelShift = 0;     // added to a
    double levelVariance = 0;  // added to its variance
    double dayVariance = 0;    // of the new day
};

struct RegimeSession {
    RegimeStep step;
    std::span<const RegimeObservation> sets;
    double setVariance = 0;  // of a set, without what counting adds
    RegimeLogs logs;
    const RegimeParameters* parameters = nullptr;
};

// Moves all hypotheses to the session's day, lets its sets speak and weighs the hypotheses anew: the weights sum to one, and
// their logarithms are theirs. Returns ln of the session's likelihood.
template <class Real>
double runRegimeSession(RegimeMixture<Real>, const RegimeSession&);

struct RegimeWeek {
    double weekVariance = 0;  // of readiness
    RegimePace pace;
    const RegimeParameters* parameters = nullptr;
};

// A week passes: readiness fades, segments grow older, end, and begin.
template <class Real>
void runRegimeWeek(RegimeMixture<Real>, const RegimeWeek&);

}  // namespace steelyard
