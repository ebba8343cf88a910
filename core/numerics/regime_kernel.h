// The two loops of the regime filter that take its time, for processors with and without wide registers. Used by
// regime_filter.cpp only.
//
// A filter of n hypotheses is 27 rows of n numbers: 6 means (a b u d lambda phi), then the upper triangle of the
// covariance by rows. n is a multiple of kLaneWidth.
#pragma once

#include "core/numerics/regime_filter.h"

namespace steelyard {

inline constexpr std::size_t kRegimeRows = kRegimeStates + kRegimeStates * (kRegimeStates + 1) / 2;

// Row of covariance (i, j), i <= j.
[[nodiscard]] constexpr std::size_t covarianceRow(std::size_t i, std::size_t j)
{
    return kRegimeStates + i * kRegimeStates - i * (i + 1) / 2 + j;
}

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
    const RegimeParameters* parameters = nullptr;
};

// Moves all hypotheses to the session's day, lets its sets speak and weighs the hypotheses anew: `weights` and their
// logarithms sum to one. Returns ln of the session's likelihood.
double runRegimeSession(double* values, double* logWeights, double* weights, std::size_t lanes, const RegimeSession&);

struct RegimeWeek {
    double weekVariance = 0;  // of readiness
    RegimePace pace;
    const RegimeParameters* parameters = nullptr;
};

// A week passes: readiness fades, segments grow older, end, and begin.
void runRegimeWeek(double* values, double* logWeights, double* weights, std::size_t lanes, const RegimeWeek&);

}  // namespace steelyard
