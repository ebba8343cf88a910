// As many hypotheses of a regime filter as are computed at once, and the mixture's weights. Used by regime_kernel.cpp only.
#pragma once

#include "core/numerics/lanes.h"
#include "core/numerics/regime_kernel.h"

#include <cmath>

namespace steelyard::regime_kernel {

inline constexpr std::size_t kStates = kRegimeStates;
inline constexpr std::size_t kA = 0;
inline constexpr std::size_t kB = 1;
inline constexpr std::size_t kU = 2;
inline constexpr std::size_t kD = 3;
inline constexpr std::size_t kLambda = 4;
inline constexpr std::size_t kPhi = 5;
inline constexpr std::size_t kTrianglePlaces = kRegimeRows - kStates;
inline constexpr std::size_t kMostAges = 32;
template <class Real>
inline constexpr std::size_t kMostBundles = kRegimes* kMostAges / kLaneWidth<Real>;

constexpr std::size_t place(std::size_t i, std::size_t j)
{
    return (i <= j ? covarianceRow(i, j) : covarianceRow(j, i)) - kStates;
}

// Below this a weight is nothing. Far above the smallest normal number: products with denormal ones take a hundred times as
// long. A weight that was lost is found again, because every week every regime begins anew.
template <class Real>
inline constexpr Real kLeastWeight = sizeof(Real) == sizeof(double) ? Real(1e-100) : Real(1e-20);

// The same of what is kept of readiness, squared.
template <class Real>
inline constexpr Real kNothingSquared = sizeof(Real) == sizeof(double) ? Real(1e-200) : Real(1e-36);

template <class Real>
struct Bundle {
    Lanes<Real> mean[kStates];
    Lanes<Real> cov[kTrianglePlaces];
};

template <class Real>
STEELYARD_LANES Bundle<Real> loadBundle(const RegimeMixture<Real>& of, std::size_t at)
{
    Bundle<Real> q;
    for (std::size_t i = 0; i < kStates; ++i) q.mean[i] = loadLanes(of.values + i * of.lanes + at);
    for (std::size_t i = 0; i < kTrianglePlaces; ++i) q.cov[i] = loadLanes(of.values + (kStates + i) * of.lanes + at);
    return q;
}

template <class Real>
STEELYARD_LANES void storeBundle(const Bundle<Real>& q, const RegimeMixture<Real>& to, std::size_t at)
{
    for (std::size_t i = 0; i < kStates; ++i) storeLanes(to.values + i * to.lanes + at, q.mean[i]);
    for (std::size_t i = 0; i < kTrianglePlaces; ++i) storeLanes(to.values + (kStates + i) * to.lanes + at, q.cov[i]);
}

// `g` times the state of every hypothesis: the mixture's mean and variance.
template <class Real>
STEELYARD_LANES RegimeExpectation expectation(const Real* values, const Real* weights, std::size_t lanes,
                                              const std::array<double, kStates>& g)
{
    Lanes<Real> weight = lanesOf(Real(0));
    Lanes<Real> first = weight;
    Lanes<Real> means[kMostBundles<Real>];
    for (std::size_t at = 0; at < lanes; at += kLaneWidth<Real>) {
        const Lanes<Real> w = loadLanes(weights + at);
        Lanes<Real> mean = lanesOf(Real(0));
        for (std::size_t i = 0; i < kStates; ++i) mean += static_cast<Real>(g[i]) * loadLanes(values + i * lanes + at);
        weight += w;
        first += w * mean;
        means[at / kLaneWidth<Real>] = mean;
    }
    const Real all = sumOfLanes(weight);
    const Real mean = sumOfLanes(first) / all;
    Lanes<Real> second = lanesOf(Real(0));
    for (std::size_t at = 0; at < lanes; at += kLaneWidth<Real>) {
        const Lanes<Real> apart = means[at / kLaneWidth<Real>] - mean;
        Lanes<Real> variance = apart * apart;
        for (std::size_t i = 0; i < kStates; ++i)
            for (std::size_t j = i; j < kStates; ++j)
                variance += static_cast<Real>((i == j ? 1 : 2) * g[i] * g[j])
                            * loadLanes(values + covarianceRow(i, j) * lanes + at);
        second += loadLanes(weights + at) * variance;
    }
    return {static_cast<double>(mean), static_cast<double>(sumOfLanes(second) / all)};
}

// Weights from their logarithms; both so that the weights sum to one. Returns ln of what they summed to.
template <class Real>
STEELYARD_LANES double normalise(const RegimeMixture<Real>& of)
{
    Lanes<Real> most = loadLanes(of.logWeights);
    for (std::size_t at = kLaneWidth<Real>; at < of.lanes; at += kLaneWidth<Real>)
        most = largerLanes(most, loadLanes(of.logWeights + at));
    const Real top = mostOfLanes(most);
    Lanes<Real> sum = lanesOf(Real(0));
    for (std::size_t at = 0; at < of.lanes; at += kLaneWidth<Real>) {
        Lanes<Real> weight = lanesExp(loadLanes(of.logWeights + at) - top);
        weight = weight < kLeastWeight<Real> ? lanesOf(Real(0)) : weight;
        storeLanes(of.weights + at, weight);
        sum += weight;
    }
    const Real all = sumOfLanes(sum);
    const double total = static_cast<double>(top) + std::log(static_cast<double>(all));
    for (std::size_t at = 0; at < of.lanes; at += kLaneWidth<Real>) {
        storeLanes(of.weights + at, loadLanes(of.weights + at) * (Real(1) / all));
        storeLanes(of.logWeights + at, loadLanes(of.logWeights + at) - static_cast<Real>(total));
    }
    return total;
}

}  // namespace steelyard::regime_kernel
