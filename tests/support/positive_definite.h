// Whether a hypothesis of the regime filter is a Gaussian: a Cholesky root with a positive diagonal exists.
//
//   for (const RegimeHypothesis& h : filter.hypotheses()) ASSERT_TRUE(isPositiveDefinite(h));
#pragma once

#include "core/numerics/regime_filter.h"

#include <cmath>

namespace steelyard::testing_support {

inline bool isPositiveDefinite(const RegimeHypothesis& h)
{
    double root[kRegimeStates][kRegimeStates] = {};
    for (std::size_t i = 0; i < kRegimeStates; ++i)
        for (std::size_t j = 0; j <= i; ++j) {
            double rest = h.covariance[i][j];
            for (std::size_t k = 0; k < j; ++k) rest -= root[i][k] * root[j][k];
            if (i != j) {
                root[i][j] = rest / root[j][j];
                continue;
            }
            if (!(rest > 0)) return false;
            root[i][i] = std::sqrt(rest);
        }
    return true;
}

}  // namespace steelyard::testing_support
