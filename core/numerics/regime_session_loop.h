// What a session says to every hypothesis of a regime filter. Used by regime_kernel.cpp only.
#pragma once

#include "core/numerics/regime_bundle.h"

#include <algorithm>

namespace steelyard::regime_kernel {

// Of any part of the state. Nothing is known as well as that, so a variance that is smaller was lost in the last digits.
template <class Real>
inline constexpr Real kLeastVariance = Real(1e-14);

template <class Real>
STEELYARD_LANES void stepToDay(Bundle<Real>& q, const RegimeStep& step)
{
    const auto f = static_cast<Real>(step.growWeeks);
    q.mean[kA] += f * q.mean[kB] + static_cast<Real>(step.levelShift);
    q.cov[place(kA, kA)] +=
        f * (Real(2) * q.cov[place(kA, kB)] + f * q.cov[place(kB, kB)]) + static_cast<Real>(step.levelVariance);
    q.cov[place(kA, kA)] = largerLanes(q.cov[place(kA, kA)], lanesOf(kLeastVariance<Real>));
    for (std::size_t j = kB; j < kStates; ++j) q.cov[place(kA, j)] += f * q.cov[place(kB, j)];
    q.mean[kD] = lanesOf(Real(0));
    for (std::size_t j = 0; j < kStates; ++j) q.cov[place(kD, j)] = lanesOf(Real(0));
    q.cov[place(kD, kD)] = lanesOf(static_cast<Real>(step.dayVariance));
}

// As many sets as a product of likelihoods surely holds: of variances down to 1e-8, and of errors up to a thousand of them.
template <class Real>
inline constexpr std::size_t kSetsOfProduct = sizeof(Real) == sizeof(double) ? 8 : 4;

// What a bundle makes of the sets so far: products first, logarithms when they are asked for.
template <class Real>
struct SessionLikelihood {
    Lanes<Real> scale;  // variances of exact sets
    Lanes<Real> tail;   // 1 + q / (nu - 2) of exact sets
    Lanes<Real> bound;  // probabilities of bounds, without exp(-square)
    Lanes<Real> squares;
    Lanes<Real> logs;
    Lanes<Real> worst;  // largest squared error of a set, in its variances
};

// Not the members' defaults: there is room for more bundles than are used.
template <class Real>
STEELYARD_LANES SessionLikelihood<Real> ofNoSet()
{
    const Lanes<Real> none = lanesOf(Real(0));
    const Lanes<Real> one = lanesOf(Real(1));
    return {one, one, one, none, none, none};
}

template <class Real>
STEELYARD_LANES void takeLogs(SessionLikelihood<Real>& like, Real nu)
{
    constexpr Real kHalf = 0.5;
    like.logs +=
        kHalf * lanesLog(like.bound * like.bound / like.scale) - kHalf * (nu + 1) * lanesLog(like.tail) - like.squares;
    like.scale = like.tail = like.bound = lanesOf(Real(1));
    like.squares = lanesOf(Real(0));
}

template <class Real>
struct ObservedSet {
    Real z = 0;
    Real load = 0;
    Real fatigue = 0;
    Real variance = 0;
};

// P h, its product with h plus the set's variance, and what the set is off by.
template <class Real>
struct Innovation {
    Lanes<Real> gain[kStates];
    Lanes<Real> variance;
    Lanes<Real> error;
};

template <class Real>
STEELYARD_LANES Innovation<Real> innovate(const Bundle<Real>& q, const ObservedSet<Real>& set)
{
    Innovation<Real> in;
    for (std::size_t i = 0; i < kStates; ++i)
        in.gain[i] = (q.cov[place(i, kA)] + q.cov[place(i, kU)]) + q.cov[place(i, kD)]
                     - (set.load * q.cov[place(i, kLambda)] + set.fatigue * q.cov[place(i, kPhi)]);
    in.variance = (in.gain[kA] + in.gain[kU]) + in.gain[kD]
                  - (set.load * in.gain[kLambda] + set.fatigue * in.gain[kPhi]) + set.variance;
    // h' P h isn't below zero but by its last digits.
    in.variance = largerLanes(in.variance, lanesOf(set.variance));
    in.error =
        set.z - ((q.mean[kA] + q.mean[kU]) + q.mean[kD] - (set.load * q.mean[kLambda] + set.fatigue * q.mean[kPhi]));
    return in;
}

// mean += P h shift; P -= (P h)(P h)' shrink.
template <class Real>
STEELYARD_LANES void correct(Bundle<Real>& q, const Innovation<Real>& in, Lanes<Real> shift, Lanes<Real> shrink)
{
    STEELYARD_UNROLLED
    for (std::size_t i = 0; i < kStates; ++i) {
        q.mean[i] += in.gain[i] * shift;
        const Lanes<Real> part = in.gain[i] * shrink;
        const Lanes<Real> variance = q.cov[place(i, i)] - part * in.gain[i];
        q.cov[place(i, i)] = largerLanes(variance, lanesOf(kLeastVariance<Real>));
        STEELYARD_UNROLLED
        for (std::size_t j = i + 1; j < kStates; ++j) q.cov[place(i, j)] -= part * in.gain[j];
    }
}

template <class Real>
STEELYARD_LANES void takeExact(Bundle<Real>& q, SessionLikelihood<Real>& like, const ObservedSet<Real>& set, Real nu)
{
    constexpr Real kOne = 1;
    const Innovation<Real> in = innovate(q, set);
    const Lanes<Real> square = in.error * in.error / in.variance;
    like.scale *= in.variance;
    like.tail *= kOne + square * (kOne / (nu - 2));
    like.worst = largerLanes(like.worst, square);
    // An unlikely set counts as a noisier one.
    const Lanes<Real> inflation = largerLanes(lanesOf(Real(0)), (nu - 2 + square) * (kOne / (nu + 1)) - kOne);
    const Lanes<Real> shrink = kOne / (in.variance + set.variance * inflation);
    correct<Real>(q, in, in.error * shrink, shrink);
}

// `sign` 1: at least z; -1: at most. alpha is how far the bound lies above what was expected, in standard deviations.
template <class Real>
STEELYARD_LANES void takeBound(Bundle<Real>& q, SessionLikelihood<Real>& like, const ObservedSet<Real>& set, Real sign)
{
    constexpr Real kHalf = 0.5;
    constexpr auto kRootHalf = static_cast<Real>(0.70710678118654752440);
    constexpr auto kRootTwoByPi = static_cast<Real>(0.79788456080286535588);
    constexpr auto kOneByRootTwoPi = static_cast<Real>(0.39894228040143267794);
    const Lanes<Real> nothing = lanesOf(Real(0));
    const Innovation<Real> in = innovate(q, set);
    const Lanes<Real> root = lanesSqrt(in.variance);
    const Lanes<Real> alpha = sign * in.error / root;
    const Lanes<Real> size = alpha < nothing ? -alpha : alpha;
    const Lanes<Real> square = kHalf * alpha * alpha;
    const Lanes<Real> scaled = lanesErfcx(size * kRootHalf);
    const Lanes<Real> bell = lanesExp(-square);
    const Lanes<Real> likely = Real(1) - kHalf * bell * scaled;  // of a bound below what was expected
    const auto above = alpha >= nothing;
    like.bound *= above ? kHalf * scaled : likely;
    like.squares += above ? square : nothing;
    like.worst = largerLanes(like.worst, above ? alpha * alpha : nothing);
    const Lanes<Real> ratio = above ? kRootTwoByPi / scaled : kOneByRootTwoPi * bell / likely;
    const Lanes<Real> narrowing = smallerLanes(largerLanes(ratio * (ratio - alpha), nothing), lanesOf(Real(1)));
    correct<Real>(q, in, sign * ratio / root, narrowing / in.variance);
}

// A tenth of a repetition, squared, in z. What claims to be counted better isn't, and beside the variance of an off day it
// would be lost in the digits of a float.
inline constexpr double kLeastSetVariance = 1e-5;

// Set by set over all bundles: what a set does to one bundle waits for the set before, but not for the other bundles.
template <class Real>
STEELYARD_LANES void takeSets(Bundle<Real>* bundles, SessionLikelihood<Real>* likes, std::size_t count,
                              const RegimeSession& session)
{
    const RegimeParameters& p = *session.parameters;
    const auto nu = static_cast<Real>(p.tail);
    std::size_t exact = 0;
    std::size_t inProduct = 0;
    for (const RegimeObservation& seen : session.sets) {
        const double counting = p.repErrorShare * seen.repError;
        const ObservedSet<Real> set{
            static_cast<Real>(seen.z), static_cast<Real>(seen.lnLoad), static_cast<Real>(seen.fatigue),
            static_cast<Real>(std::max(session.setVariance + counting * counting, kLeastSetVariance))};
        if (seen.kind == ObservationKind::Exact) {
            for (std::size_t i = 0; i < count; ++i) takeExact(bundles[i], likes[i], set, nu);
            ++exact;
        } else {
            const Real sign = seen.kind == ObservationKind::AtLeast ? 1 : -1;
            for (std::size_t i = 0; i < count; ++i) takeBound(bundles[i], likes[i], set, sign);
        }
        if (++inProduct == kSetsOfProduct<Real>) {
            for (std::size_t i = 0; i < count; ++i) takeLogs(likes[i], nu);
            inProduct = 0;
        }
    }
    const auto constant = static_cast<Real>(static_cast<double>(exact) * session.logs.density);
    for (std::size_t i = 0; i < count; ++i) {
        if (inProduct > 0) takeLogs(likes[i], nu);
        likes[i].logs += constant;
    }
}

// One Gaussian for two: `share` is the second one's.
template <class Real>
STEELYARD_LANES void blend(Bundle<Real>& first, const Bundle<Real>& second, Lanes<Real> share)
{
    Lanes<Real> apart[kStates];
    for (std::size_t i = 0; i < kStates; ++i) apart[i] = second.mean[i] - first.mean[i];
    const Lanes<Real> rest = Real(1) - share;
    const Lanes<Real> both = share * rest;
    for (std::size_t i = 0; i < kStates; ++i) {
        first.mean[i] += share * apart[i];
        const Lanes<Real> part = both * apart[i];
        for (std::size_t j = i; j < kStates; ++j) {
            const std::size_t at = place(i, j);
            first.cov[at] = rest * first.cov[at] + (share * second.cov[at] + part * apart[j]);
        }
    }
}

// The bundles to which a session is odd, had the day been off.
template <class Real>
struct OffDays {
    Bundle<Real> bundles[kMostBundles<Real>];
    SessionLikelihood<Real> fits[kMostBundles<Real>];
    std::size_t of[kMostBundles<Real>];
    std::size_t count = 0;
};

// Where nothing about the session is odd to a regime, an off day has no say. By regime, not by bundle: so the answer doesn't
// depend on how many hypotheses are computed at once.
template <class Real>
STEELYARD_LANES void takeOffDays(OffDays<Real>& off, const SessionLikelihood<Real>* usual,
                                 const RegimeMixture<Real>& mixture, const RegimeSession& session)
{
    const RegimeParameters& p = *session.parameters;
    const std::size_t bundles = mixture.lanes / kRegimes / kLaneWidth<Real>;
    for (std::size_t mode = 0; mode < kRegimes; ++mode) {
        Lanes<Real> worst = lanesOf(Real(0));
        for (std::size_t i = mode * bundles; i < (mode + 1) * bundles; ++i) worst = largerLanes(worst, usual[i].worst);
        if (mostOfLanes(worst) < static_cast<Real>(p.offFrom)) continue;
        for (std::size_t i = mode * bundles; i < (mode + 1) * bundles; ++i) {
            Bundle<Real>& one = off.bundles[off.count];
            one = loadBundle(mixture, i * kLaneWidth<Real>);
            stepToDay(one, session.step);
            one.mean[kD] = lanesOf(static_cast<Real>(p.offMean));
            one.cov[place(kD, kD)] += static_cast<Real>(p.offSd * p.offSd);
            off.fits[off.count] = ofNoSet<Real>();
            off.of[off.count++] = i;
        }
    }
    if (off.count > 0) takeSets(off.bundles, off.fits, off.count, session);
}

// What a hypothesis keeps that a session took beyond the numbers: its weight is gone, unless it so happened to all.
template <class Real>
inline constexpr Real kImpossible = Real(-1e4);

// Squares of means and variances of a state that can be: levels, loads and paces are logarithms, a few at most.
template <class Real>
inline constexpr Real kMostOfState = Real(1e6);

// Where rounding brought a hypothesis beyond all numbers that can be (data that can't be, under spreads far smaller than any
// lifter's), it stands as it was before the session and is as good as ruled out. So nothing that isn't a number is ever kept.
template <class Real>
STEELYARD_LANES void keepSound(Bundle<Real>& q, Lanes<Real>& log, const RegimeMixture<Real>& before, std::size_t at)
{
    const Lanes<Real> nothing = lanesOf(Real(0));
    Lanes<Real> size = nothing * log;  // no number where one of them isn't
    for (const Lanes<Real>& mean : q.mean) size += mean * mean;
    for (const Lanes<Real>& cov : q.cov) size += nothing * cov;
    for (std::size_t i = 0; i < kStates; ++i) size += q.cov[place(i, i)];
    const auto sound = size < lanesOf(kMostOfState<Real>);
    log = sound ? log : lanesOf(kImpossible<Real>);
    for (std::size_t i = 0; i < kStates; ++i)
        q.mean[i] = sound ? q.mean[i] : loadLanes(before.values + i * before.lanes + at);
    for (std::size_t i = 0; i < kTrianglePlaces; ++i)
        q.cov[i] = sound ? q.cov[i] : loadLanes(before.values + (kStates + i) * before.lanes + at);
}

// All of a session but the weights, whose logarithms are not yet normal.
template <class Real>
STEELYARD_LANES void takeSession(const RegimeMixture<Real>& mixture, const RegimeSession& session)
{
    Bundle<Real> usual[kMostBundles<Real>];
    SessionLikelihood<Real> fits[kMostBundles<Real>];
    OffDays<Real> off;
    const std::size_t bundles = mixture.lanes / kLaneWidth<Real>;
    for (std::size_t i = 0; i < bundles; ++i) {
        usual[i] = loadBundle(mixture, i * kLaneWidth<Real>);
        stepToDay(usual[i], session.step);
        fits[i] = ofNoSet<Real>();
    }
    takeSets(usual, fits, bundles, session);
    takeOffDays(off, fits, mixture, session);
    std::size_t nextOff = 0;
    for (std::size_t i = 0; i < bundles; ++i) {
        const std::size_t at = i * kLaneWidth<Real>;
        const Lanes<Real> logA = fits[i].logs + static_cast<Real>(session.logs.usualDay);
        Lanes<Real> log = logA;
        if (nextOff < off.count && off.of[nextOff] == i) {
            const Lanes<Real> logB = off.fits[nextOff].logs + static_cast<Real>(session.logs.offDay);
            // ln(e^A + e^B) from the larger of the two, and B's share of it.
            const Lanes<Real> most = largerLanes(logA, logB);
            const Lanes<Real> expA = lanesExp(logA - most);
            const Lanes<Real> expB = lanesExp(logB - most);
            const Lanes<Real> sum = expA + expB;
            blend<Real>(usual[i], off.bundles[nextOff], expB / sum);
            log = most + lanesLog(sum);
            ++nextOff;
        }
        keepSound(usual[i], log, mixture, at);
        storeBundle(usual[i], mixture, at);
        storeLanes(mixture.logWeights + at, loadLanes(mixture.logWeights + at) + log);
    }
}

}  // namespace steelyard::regime_kernel
