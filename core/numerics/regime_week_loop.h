// What a week does to the hypotheses of a regime filter. Used by regime_kernel.cpp only.
#pragma once

#include "core/numerics/regime_bundle.h"

namespace steelyard::regime_kernel {

// Weight, mean and covariance of a part of the mixture taken as one Gaussian.
template <class Real>
struct Moments {
    Real weight;
    Real values[kRegimeRows];
};

// Of the hypotheses at `values` with these weights, which sum to `total`, above zero.
template <class Real>
STEELYARD_LANES void takeMoments(Moments<Real>& out, const Real* values, std::size_t lanes, const Lanes<Real>* weights,
                                 Real total)
{
    const std::size_t ages = lanes / kRegimes;
    const Real scale = Real(1) / total;
    Lanes<Real> sums[kStates] = {};
    for (std::size_t at = 0; at < ages; at += kLaneWidth<Real>) STEELYARD_UNROLLED
    for (std::size_t i = 0; i < kStates; ++i)
        sums[i] += weights[at / kLaneWidth<Real>] * loadLanes(values + i * lanes + at);
    out.weight = total;
    STEELYARD_UNROLLED
    for (std::size_t i = 0; i < kStates; ++i) out.values[i] = sumOfLanes(sums[i]) * scale;
    Lanes<Real> squares[kTrianglePlaces] = {};
    for (std::size_t at = 0; at < ages; at += kLaneWidth<Real>) {
        const Lanes<Real> w = weights[at / kLaneWidth<Real>];
        Lanes<Real> apart[kStates];
        STEELYARD_UNROLLED
        for (std::size_t i = 0; i < kStates; ++i) apart[i] = loadLanes(values + i * lanes + at) - out.values[i];
        STEELYARD_UNROLLED
        for (std::size_t i = 0; i < kStates; ++i) STEELYARD_UNROLLED
        for (std::size_t j = i; j < kStates; ++j)
            squares[place(i, j)] += w * (loadLanes(values + covarianceRow(i, j) * lanes + at) + apart[i] * apart[j]);
    }
    STEELYARD_UNROLLED
    for (std::size_t i = 0; i < kTrianglePlaces; ++i) out.values[kStates + i] = sumOfLanes(squares[i]) * scale;
}

// Two Gaussians taken as one: `b` joins `a`.
template <class Real>
STEELYARD_LANES void join(Moments<Real>& a, const Moments<Real>& b)
{
    const Real weight = a.weight + b.weight;
    const Real shareB = b.weight / weight;
    const Real shareA = a.weight / weight;
    Real apart[kStates];
    STEELYARD_UNROLLED
    for (std::size_t i = 0; i < kStates; ++i) {
        apart[i] = b.values[i] - a.values[i];
        a.values[i] += shareB * apart[i];
    }
    STEELYARD_UNROLLED
    for (std::size_t i = 0; i < kStates; ++i) STEELYARD_UNROLLED
    for (std::size_t j = i; j < kStates; ++j) {
        const std::size_t row = covarianceRow(i, j);
        a.values[row] = shareA * a.values[row] + shareB * b.values[row] + shareA * shareB * apart[i] * apart[j];
    }
    a.weight = weight;
}

// What has faded to nothing is made nothing: over a long break it would become a denormal number.
template <class Real>
STEELYARD_LANES void scaleLanes(Real* at, Real factor)
{
    const Lanes<Real> value = factor * loadLanes(at);
    storeLanes(at, value * value > lanesOf(kNothingSquared<Real>) ? value : lanesOf(Real(0)));
}

template <class Real>
STEELYARD_LANES void fadeReadiness(const RegimeMixture<Real>& of, const RegimeWeek& week)
{
    const auto rho = static_cast<Real>(week.parameters->weekMemory);
    const Real fresh = static_cast<Real>(week.weekVariance) * (Real(1) - rho * rho);
    Real* own = of.values + covarianceRow(kU, kU) * of.lanes;
    for (std::size_t at = 0; at < of.lanes; at += kLaneWidth<Real>) {
        scaleLanes(of.values + kU * of.lanes + at, rho);
        for (std::size_t j = 0; j < kStates; ++j)
            if (j != kU) scaleLanes(of.values + (kStates + place(kU, j)) * of.lanes + at, rho);
        storeLanes(own + at, rho * rho * loadLanes(own + at) + fresh);
    }
}

// Moves every age up by one. The youngest stands twice, the oldest is `oldest`.
template <class Real>
STEELYARD_LANES void growOlder(Real* of, std::size_t ages, Real oldest)
{
    for (std::size_t at = ages - kLaneWidth<Real>; at > 0; at -= kLaneWidth<Real>)
        storeLanes(of + at, loadLanes(of + at - 1));
    storeLanes(of, movedUpLanes(loadLanes(of)));
    of[ages - 1] = oldest;
}

// What leaves a regime this week, as one Gaussian, of weight 0 when there is next to nothing. `chances`: of leaving, by age.
template <class Real>
STEELYARD_LANES void part(Moments<Real>& leaving, Real* own, const Real* values, std::size_t lanes, const Real* chances)
{
    const std::size_t ages = lanes / kRegimes;
    Lanes<Real> parting[kMostAges / kLaneWidth<Real>];
    Lanes<Real> sum = lanesOf(Real(0));
    for (std::size_t at = 0; at < ages; at += kLaneWidth<Real>) {
        const Lanes<Real> weight = loadLanes(own + at);
        const Lanes<Real> leaves = weight * loadLanes(chances + at);
        storeLanes(own + at, weight - leaves);
        parting[at / kLaneWidth<Real>] = leaves;
        sum += leaves;
    }
    const Real total = sumOfLanes(sum);
    leaving.weight = 0;
    if (total > kLeastWeight<Real>) takeMoments(leaving, values, lanes, parting, total);
}

// The two oldest of a regime become one; the others grow older by a week. Numbers are read one by one before any are written
// so: a register that is read just after a part of it was written waits.
template <class Real>
STEELYARD_LANES void age(Real* own, Real* values, std::size_t lanes)
{
    const std::size_t ages = lanes / kRegimes;
    const std::size_t last = ages - 1;
    const Real weight = own[last - 1] + own[last];
    const Real share = weight > kLeastWeight<Real> ? own[last] / weight : Real(0.5);
    Real oldest[kRegimeRows];
    Real apart[kStates];
    STEELYARD_UNROLLED
    for (std::size_t i = 0; i < kStates; ++i) {
        apart[i] = values[i * lanes + last] - values[i * lanes + last - 1];
        oldest[i] = values[i * lanes + last - 1] + share * apart[i];
    }
    STEELYARD_UNROLLED
    for (std::size_t i = 0; i < kStates; ++i) STEELYARD_UNROLLED
    for (std::size_t j = i; j < kStates; ++j) {
        const Real* cov = values + covarianceRow(i, j) * lanes;
        oldest[covarianceRow(i, j)] =
            (1 - share) * cov[last - 1] + share * cov[last] + share * (1 - share) * apart[i] * apart[j];
    }
    STEELYARD_UNROLLED
    for (std::size_t c = 0; c < kRegimeRows; ++c) growOlder(values + c * lanes, ages, oldest[c]);
    growOlder(own, ages, weight);
}

// What leaves the other regimes begins as the youngest of this one.
template <class Real>
STEELYARD_LANES void begin(std::size_t mode, const Moments<Real>* leaving, const RegimeMixture<Real>& mixture,
                           const RegimeWeek& week)
{
    const RegimeParameters& p = *week.parameters;
    const std::size_t first = mode * (mixture.lanes / kRegimes);
    Moments<Real> m{};
    for (std::size_t from = 0; from < kRegimes; ++from) {
        if (from == mode || !(leaving[from].weight > 0)) continue;
        Moments<Real> one = leaving[from];
        one.weight *= static_cast<Real>(p.change[from][mode] / (1 - p.change[from][from]));
        if (!(one.weight > kLeastWeight<Real>)) continue;
        if (m.weight > 0)
            join(m, one);
        else
            m = one;
    }
    mixture.weights[first] = m.weight;
    if (!(m.weight > 0)) return;  // the values of the youngest stand; their weight is nothing
    const double paceMean[kRegimes] = {week.pace.mean, 0, p.fallMean};
    const double paceSd[kRegimes] = {week.pace.sd, p.flatSd, p.fallSd};
    m.values[kB] = static_cast<Real>(paceMean[mode]);
    for (std::size_t j = 0; j < kStates; ++j) m.values[kStates + place(kB, j)] = 0;
    m.values[covarianceRow(kB, kB)] = static_cast<Real>(paceSd[mode] * paceSd[mode]);
    m.values[covarianceRow(kA, kA)] += static_cast<Real>(p.changeJump * p.changeJump);
    STEELYARD_UNROLLED
    for (std::size_t c = 0; c < kRegimeRows; ++c) mixture.values[c * mixture.lanes + first] = m.values[c];
}

template <class Real>
STEELYARD_LANES void passWeek(const RegimeMixture<Real>& mixture, const RegimeWeek& week)
{
    const RegimeParameters& p = *week.parameters;
    const std::size_t ages = mixture.lanes / kRegimes;
    Real chances[kRegimes][kMostAges];
    for (std::size_t mode = 0; mode < kRegimes; ++mode)
        for (std::size_t at = 0; at < ages; ++at)
            chances[mode][at] = static_cast<Real>((1 - p.change[mode][mode])
                                                  * (static_cast<int>(at) < p.youngWeeks ? p.youngShare : 1.0));
    fadeReadiness(mixture, week);
    Moments<Real> leaving[kRegimes];
    for (std::size_t mode = 0; mode < kRegimes; ++mode) {
        Real* own = mixture.weights + mode * ages;
        Real* values = mixture.values + mode * ages;
        part(leaving[mode], own, values, mixture.lanes, chances[mode]);
        age(own, values, mixture.lanes);
    }
    for (std::size_t mode = 0; mode < kRegimes; ++mode) begin(mode, leaving, mixture, week);
    for (std::size_t at = 0; at < mixture.lanes; at += kLaneWidth<Real>)
        storeLanes(mixture.logWeights + at,
                   lanesLog(largerLanes(loadLanes(mixture.weights + at), lanesOf(kLeastWeight<Real>))));
    normalise(mixture);
}

}  // namespace steelyard::regime_kernel
