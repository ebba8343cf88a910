#include "core/numerics/regime_kernel.h"

#include "core/numerics/lanes.h"

#include <cassert>
#include <cmath>
#include <numbers>

namespace steelyard {
namespace {

constexpr std::size_t kStates = kRegimeStates;
constexpr std::size_t kA = 0;
constexpr std::size_t kB = 1;
constexpr std::size_t kU = 2;
constexpr std::size_t kD = 3;
constexpr std::size_t kLambda = 4;
constexpr std::size_t kPhi = 5;
constexpr std::size_t kTrianglePlaces = kRegimeRows - kStates;
constexpr double kRootHalf = 0.70710678118654752440;
constexpr double kRootTwoByPi = 0.79788456080286535588;
constexpr double kOneByRootTwoPi = 0.39894228040143267794;
// As many sets as a product of likelihoods surely holds.
constexpr std::size_t kSetsOfProduct = 8;
constexpr std::size_t kMostAges = 32;
constexpr std::size_t kMostQuartets = kRegimes * kMostAges / kLaneWidth;

constexpr std::size_t place(std::size_t i, std::size_t j)
{
    return (i <= j ? covarianceRow(i, j) : covarianceRow(j, i)) - kStates;
}

// Four hypotheses at once.
struct Quartet {
    Lanes mean[kStates];
    Lanes cov[kTrianglePlaces];
};

STEELYARD_LANES Quartet loadQuartet(const double* values, std::size_t lanes, std::size_t at)
{
    Quartet q;
    for (std::size_t i = 0; i < kStates; ++i) q.mean[i] = loadLanes(values + i * lanes + at);
    for (std::size_t i = 0; i < kTrianglePlaces; ++i) q.cov[i] = loadLanes(values + (kStates + i) * lanes + at);
    return q;
}

STEELYARD_LANES void storeQuartet(const Quartet& q, double* values, std::size_t lanes, std::size_t at)
{
    for (std::size_t i = 0; i < kStates; ++i) storeLanes(values + i * lanes + at, q.mean[i]);
    for (std::size_t i = 0; i < kTrianglePlaces; ++i) storeLanes(values + (kStates + i) * lanes + at, q.cov[i]);
}

STEELYARD_LANES void stepToDay(Quartet& q, const RegimeStep& step)
{
    const double f = step.growWeeks;
    q.mean[kA] += f * q.mean[kB] + step.levelShift;
    q.cov[place(kA, kA)] += f * (2.0 * q.cov[place(kA, kB)] + f * q.cov[place(kB, kB)]) + step.levelVariance;
    for (std::size_t j = kB; j < kStates; ++j) q.cov[place(kA, j)] += f * q.cov[place(kB, j)];
    q.mean[kD] = lanesOf(0);
    for (std::size_t j = 0; j < kStates; ++j) q.cov[place(kD, j)] = lanesOf(0);
    q.cov[place(kD, kD)] = lanesOf(step.dayVariance);
}

// What a quartet makes of the sets so far: products first, logarithms when they are asked for.
struct SessionLikelihood {
    Lanes scale = lanesOf(1);  // variances of exact sets
    Lanes tail = lanesOf(1);   // 1 + q / (nu - 2) of exact sets
    Lanes bound = lanesOf(1);  // probabilities of bounds, without exp(-square)
    Lanes squares = lanesOf(0);
    Lanes logs = lanesOf(0);
    Lanes worst = lanesOf(0);  // largest squared error of a set, in its variances
};

STEELYARD_LANES void takeLogs(SessionLikelihood& like, double nu)
{
    like.logs +=
        0.5 * lanesLog(like.bound * like.bound / like.scale) - 0.5 * (nu + 1) * lanesLog(like.tail) - like.squares;
    like.scale = like.tail = like.bound = lanesOf(1);
    like.squares = lanesOf(0);
}

struct ObservedSet {
    double z = 0;
    double load = 0;
    double fatigue = 0;
    double variance = 0;
};

// P h, its product with h plus the set's variance, and what the set is off by.
struct Innovation {
    Lanes gain[kStates];
    Lanes variance;
    Lanes error;
};

STEELYARD_LANES Innovation innovate(const Quartet& q, const ObservedSet& set)
{
    Innovation in;
    for (std::size_t i = 0; i < kStates; ++i)
        in.gain[i] = (q.cov[place(i, kA)] + q.cov[place(i, kU)]) + q.cov[place(i, kD)]
                     - (set.load * q.cov[place(i, kLambda)] + set.fatigue * q.cov[place(i, kPhi)]);
    in.variance = (in.gain[kA] + in.gain[kU]) + in.gain[kD]
                  - (set.load * in.gain[kLambda] + set.fatigue * in.gain[kPhi]) + set.variance;
    in.error =
        set.z - ((q.mean[kA] + q.mean[kU]) + q.mean[kD] - (set.load * q.mean[kLambda] + set.fatigue * q.mean[kPhi]));
    return in;
}

// mean += P h shift; P -= (P h)(P h)' shrink.
STEELYARD_LANES void correct(Quartet& q, const Innovation& in, Lanes shift, Lanes shrink)
{
    for (std::size_t i = 0; i < kStates; ++i) {
        q.mean[i] += in.gain[i] * shift;
        const Lanes part = in.gain[i] * shrink;
        for (std::size_t j = i; j < kStates; ++j) q.cov[place(i, j)] -= part * in.gain[j];
    }
}

STEELYARD_LANES void takeExact(Quartet& q, SessionLikelihood& like, const ObservedSet& set, double nu)
{
    const Innovation in = innovate(q, set);
    const Lanes square = in.error * in.error / in.variance;
    like.scale *= in.variance;
    like.tail *= 1.0 + square * (1.0 / (nu - 2));
    like.worst = largerLanes(like.worst, square);
    // An unlikely set counts as a noisier one.
    const Lanes inflation = largerLanes(lanesOf(0), (nu - 2 + square) * (1.0 / (nu + 1)) - 1.0);
    const Lanes shrink = 1.0 / (in.variance + set.variance * inflation);
    correct(q, in, in.error * shrink, shrink);
}

// `sign` 1: at least z; -1: at most. alpha is how far the bound lies above what was expected, in standard deviations.
STEELYARD_LANES void takeBound(Quartet& q, SessionLikelihood& like, const ObservedSet& set, double sign)
{
    const Innovation in = innovate(q, set);
    const Lanes root = lanesSqrt(in.variance);
    const Lanes alpha = sign * in.error / root;
    const Lanes size = alpha < 0.0 ? -alpha : alpha;
    const Lanes square = 0.5 * alpha * alpha;
    const Lanes scaled = lanesErfcx(size * kRootHalf);
    const Lanes bell = lanesExp(-square);
    const Lanes likely = 1.0 - 0.5 * bell * scaled;  // of a bound below what was expected
    const auto above = alpha >= 0.0;
    like.bound *= above ? 0.5 * scaled : likely;
    like.squares += above ? square : lanesOf(0);
    like.worst = largerLanes(like.worst, above ? alpha * alpha : lanesOf(0));
    const Lanes ratio = above ? kRootTwoByPi / scaled : kOneByRootTwoPi * bell / likely;
    const Lanes narrowing = smallerLanes(largerLanes(ratio * (ratio - alpha), lanesOf(0)), lanesOf(1));
    correct(q, in, sign * ratio / root, narrowing / in.variance);
}

// Set by set over all quartets: what a set does to one quartet waits for the set before, but not for the other quartets.
STEELYARD_LANES void takeSets(Quartet* quartets, SessionLikelihood* likes, std::size_t count,
                              const RegimeSession& session, double constant)
{
    const RegimeParameters& p = *session.parameters;
    std::size_t exact = 0;
    std::size_t inProduct = 0;
    for (const RegimeObservation& seen : session.sets) {
        const double counting = p.repErrorShare * seen.repError;
        const ObservedSet set{seen.z, seen.lnLoad, seen.fatigue, session.setVariance + counting * counting};
        if (seen.kind == ObservationKind::Exact) {
            for (std::size_t i = 0; i < count; ++i) takeExact(quartets[i], likes[i], set, p.tail);
            ++exact;
        } else {
            const double sign = seen.kind == ObservationKind::AtLeast ? 1.0 : -1.0;
            for (std::size_t i = 0; i < count; ++i) takeBound(quartets[i], likes[i], set, sign);
        }
        if (++inProduct == kSetsOfProduct) {
            for (std::size_t i = 0; i < count; ++i) takeLogs(likes[i], p.tail);
            inProduct = 0;
        }
    }
    for (std::size_t i = 0; i < count; ++i) {
        if (inProduct > 0) takeLogs(likes[i], p.tail);
        likes[i].logs += static_cast<double>(exact) * constant;
    }
}

// One Gaussian for two: `share` is the second one's.
STEELYARD_LANES void blend(Quartet& first, const Quartet& second, Lanes share)
{
    Lanes apart[kStates];
    for (std::size_t i = 0; i < kStates; ++i) apart[i] = second.mean[i] - first.mean[i];
    const Lanes both = share * (1.0 - share);
    for (std::size_t i = 0; i < kStates; ++i) {
        first.mean[i] += share * apart[i];
        const Lanes part = both * apart[i];
        for (std::size_t j = i; j < kStates; ++j) {
            const std::size_t at = place(i, j);
            first.cov[at] += share * (second.cov[at] - first.cov[at]) + part * apart[j];
        }
    }
}

STEELYARD_LANES void sessionBody(double* values, double* logWeights, std::size_t lanes, const RegimeSession& session)
{
    const RegimeParameters& p = *session.parameters;
    const double logUsual = std::log(1 - p.offShare);
    const double logOff = std::log(p.offShare);
    const double nu = p.tail;
    // Of the density of an exact set.
    const double constant =
        std::lgamma((nu + 1) / 2) - std::lgamma(nu / 2) - 0.5 * std::log(std::numbers::pi * (nu - 2));
    Quartet usual[kMostQuartets];
    Quartet off[kMostQuartets];
    SessionLikelihood fits[kMostQuartets];
    SessionLikelihood fitsOff[kMostQuartets];
    const std::size_t quartets = lanes / kLaneWidth;
    for (std::size_t i = 0; i < quartets; ++i) {
        usual[i] = loadQuartet(values, lanes, i * kLaneWidth);
        stepToDay(usual[i], session.step);
        fits[i] = {};
    }
    takeSets(usual, fits, quartets, session, constant);
    // Where nothing about the session is odd, an off day has no say.
    std::size_t odd[kMostQuartets];
    std::size_t odds = 0;
    for (std::size_t i = 0; i < quartets; ++i) {
        if (mostOfLanes(fits[i].worst) < p.offFrom) continue;
        Quartet& one = off[odds];
        one = loadQuartet(values, lanes, i * kLaneWidth);
        stepToDay(one, session.step);
        one.mean[kD] = lanesOf(p.offMean);
        one.cov[place(kD, kD)] += p.offSd * p.offSd;
        fitsOff[odds] = {};
        odd[odds++] = i;
    }
    if (odds > 0) takeSets(off, fitsOff, odds, session, constant);
    std::size_t nextOdd = 0;
    for (std::size_t i = 0; i < quartets; ++i) {
        const std::size_t at = i * kLaneWidth;
        const Lanes logA = fits[i].logs + logUsual;
        Lanes log = logA;
        if (nextOdd < odds && odd[nextOdd] == i) {
            const Lanes logB = fitsOff[nextOdd].logs + logOff;
            // ln(e^A + e^B) from the larger of the two, and B's share of it.
            const Lanes most = largerLanes(logA, logB);
            const Lanes expA = lanesExp(logA - most);
            const Lanes expB = lanesExp(logB - most);
            const Lanes sum = expA + expB;
            blend(usual[i], off[nextOdd], expB / sum);
            log = most + lanesLog(sum);
            ++nextOdd;
        }
        storeQuartet(usual[i], values, lanes, at);
        storeLanes(logWeights + at, loadLanes(logWeights + at) + log);
    }
}

// Below this a weight is nothing. Far above the smallest normal double: products with denormal numbers take a hundred times
// as long.
constexpr double kLeastWeight = 1e-100;

STEELYARD_LANES double normaliseBody(double* logWeights, double* weights, std::size_t lanes)
{
    Lanes most = loadLanes(logWeights);
    for (std::size_t at = kLaneWidth; at < lanes; at += kLaneWidth)
        most = largerLanes(most, loadLanes(logWeights + at));
    const double top = mostOfLanes(most);
    Lanes sum = lanesOf(0);
    for (std::size_t at = 0; at < lanes; at += kLaneWidth) {
        Lanes weight = lanesExp(loadLanes(logWeights + at) - top);
        weight = weight < kLeastWeight ? lanesOf(0) : weight;
        storeLanes(weights + at, weight);
        sum += weight;
    }
    const double all = sumOfLanes(sum);
    const double total = top + std::log(all);
    for (std::size_t at = 0; at < lanes; at += kLaneWidth) {
        storeLanes(weights + at, loadLanes(weights + at) * (1.0 / all));
        storeLanes(logWeights + at, loadLanes(logWeights + at) - total);
    }
    return total;
}

// Weight, mean and covariance of a part of the mixture taken as one Gaussian.
struct Moments {
    double weight = 0;
    double values[kRegimeRows] = {};
};

// Of the hypotheses at `values` with these weights, which sum to something above zero.
STEELYARD_LANES Moments momentsOf(const double* values, std::size_t lanes, const double* weights, std::size_t count)
{
    Moments out;
    Lanes total = lanesOf(0);
    Lanes sums[kStates] = {};
    for (std::size_t at = 0; at < count; at += kLaneWidth) {
        const Lanes w = loadLanes(weights + at);
        total += w;
        for (std::size_t i = 0; i < kStates; ++i) sums[i] += w * loadLanes(values + i * lanes + at);
    }
    out.weight = sumOfLanes(total);
    const double scale = 1.0 / out.weight;
    for (std::size_t i = 0; i < kStates; ++i) out.values[i] = sumOfLanes(sums[i]) * scale;
    Lanes squares[kTrianglePlaces] = {};
    for (std::size_t at = 0; at < count; at += kLaneWidth) {
        const Lanes w = loadLanes(weights + at);
        Lanes apart[kStates];
        for (std::size_t i = 0; i < kStates; ++i) apart[i] = loadLanes(values + i * lanes + at) - out.values[i];
        for (std::size_t i = 0; i < kStates; ++i) {
            const Lanes part = w * apart[i];
            for (std::size_t j = i; j < kStates; ++j)
                squares[place(i, j)] += w * loadLanes(values + covarianceRow(i, j) * lanes + at) + part * apart[j];
        }
    }
    for (std::size_t i = 0; i < kTrianglePlaces; ++i) out.values[kStates + i] = sumOfLanes(squares[i]) * scale;
    return out;
}

// Two Gaussians taken as one.
STEELYARD_LANES Moments joined(const Moments& a, const Moments& b)
{
    Moments out;
    out.weight = a.weight + b.weight;
    const double shareB = b.weight / out.weight;
    const double shareA = a.weight / out.weight;
    double apart[kStates];
    for (std::size_t i = 0; i < kStates; ++i) {
        apart[i] = b.values[i] - a.values[i];
        out.values[i] = a.values[i] + shareB * apart[i];
    }
    for (std::size_t i = 0; i < kStates; ++i)
        for (std::size_t j = i; j < kStates; ++j) {
            const std::size_t row = covarianceRow(i, j);
            out.values[row] = shareA * a.values[row] + shareB * b.values[row] + shareA * shareB * apart[i] * apart[j];
        }
    return out;
}

STEELYARD_LANES void fadeReadiness(double* values, std::size_t lanes, double rho, double variance)
{
    const auto scaleRow = [&](std::size_t row, double factor) {
        for (std::size_t at = 0; at < lanes; at += kLaneWidth)
            storeLanes(values + row * lanes + at, factor * loadLanes(values + row * lanes + at));
    };
    scaleRow(kU, rho);
    for (std::size_t j = 0; j < kStates; ++j)
        if (j != kU) scaleRow(kStates + place(kU, j), rho);
    const std::size_t own = covarianceRow(kU, kU);
    for (std::size_t at = 0; at < lanes; at += kLaneWidth)
        storeLanes(values + own * lanes + at,
                   rho * rho * loadLanes(values + own * lanes + at) + variance * (1 - rho * rho));
}

// Moves every age but the oldest up by one, onto the one before the oldest. `ages` is a multiple of four, at least eight.
STEELYARD_LANES void growOlder(double* of, std::size_t ages)
{
    const double oldest = of[ages - 1];
    for (std::size_t at = ages - kLaneWidth; at > 0; at -= kLaneWidth) storeLanes(of + at, loadLanes(of + at - 1));
    storeLanes(of + 1, loadLanes(of));
    of[ages - 1] = oldest;
}

// The Gaussian that leaves a regime this week, weighted by the chance of leaving.
struct Leaving {
    Moments moments;
    bool any = false;
};

STEELYARD_LANES void weekBody(double* values, double* logWeights, double* weights, std::size_t lanes,
                              const RegimeWeek& week)
{
    const RegimeParameters& p = *week.parameters;
    const std::size_t ages = lanes / kRegimes;
    fadeReadiness(values, lanes, p.weekMemory, week.weekVariance);
    Leaving leaving[kRegimes];
    for (std::size_t mode = 0; mode < kRegimes; ++mode) {
        const double change = 1 - p.change[mode][mode];
        double* own = weights + mode * ages;
        double* row = values + mode * ages;
        double parting[kMostAges];
        double sum = 0;
        for (std::size_t age = 0; age < ages; ++age) {
            const double leave = change * (static_cast<int>(age) < p.youngWeeks ? p.youngShare : 1.0);
            parting[age] = own[age] * leave;
            own[age] *= 1 - leave;
            sum += parting[age];
        }
        if (sum > kLeastWeight) leaving[mode] = {momentsOf(row, lanes, parting, ages), true};
        // The two oldest become one; the others grow older by a week.
        const std::size_t last = ages - 1;
        const double oldest = own[last - 1] + own[last];
        const double share = oldest > kLeastWeight ? own[last] / oldest : 0.5;
        double apart[kStates];
        for (std::size_t i = 0; i < kStates; ++i) apart[i] = row[i * lanes + last] - row[i * lanes + last - 1];
        for (std::size_t i = 0; i < kStates; ++i) {
            row[i * lanes + last] = row[i * lanes + last - 1] + share * apart[i];
            for (std::size_t j = i; j < kStates; ++j) {
                double* cov = row + covarianceRow(i, j) * lanes;
                cov[last] = (1 - share) * cov[last - 1] + share * cov[last] + share * (1 - share) * apart[i] * apart[j];
            }
        }
        own[last] = oldest;
        for (std::size_t c = 0; c < kRegimeRows; ++c) growOlder(row + c * lanes, ages);
        growOlder(own, ages);
    }
    const double paceMean[kRegimes] = {week.pace.mean, 0, p.fallMean};
    const double paceSd[kRegimes] = {week.pace.sd, p.flatSd, p.fallSd};
    for (std::size_t mode = 0; mode < kRegimes; ++mode) {
        Leaving born;
        for (std::size_t from = 0; from < kRegimes; ++from) {
            if (from == mode || !leaving[from].any) continue;
            Moments part = leaving[from].moments;
            part.weight *= p.change[from][mode] / (1 - p.change[from][from]);
            if (!(part.weight > kLeastWeight)) continue;
            born = {born.any ? joined(born.moments, part) : part, true};
        }
        double* row = values + mode * ages;
        weights[mode * ages] = born.any ? born.moments.weight : 0;
        if (!born.any) continue;  // the values of the youngest stand; their weight is nothing
        Moments& m = born.moments;
        m.values[kB] = paceMean[mode];
        for (std::size_t j = 0; j < kStates; ++j) m.values[kStates + place(kB, j)] = 0;
        m.values[covarianceRow(kB, kB)] = paceSd[mode] * paceSd[mode];
        m.values[covarianceRow(kA, kA)] += p.changeJump * p.changeJump;
        for (std::size_t c = 0; c < kRegimeRows; ++c) row[c * lanes] = m.values[c];
    }
    for (std::size_t at = 0; at < lanes; at += kLaneWidth)
        storeLanes(logWeights + at, lanesLog(largerLanes(loadLanes(weights + at), lanesOf(kLeastWeight))));
    normaliseBody(logWeights, weights, lanes);
}

#if defined(__x86_64__) && !defined(STEELYARD_PLAIN_LANES)
#define STEELYARD_WIDE 1
#define STEELYARD_WIDE_TARGET __attribute__((target("avx2,fma")))

STEELYARD_WIDE_TARGET double sessionWide(double* values, double* logWeights, double* weights, std::size_t lanes,
                                         const RegimeSession& session)
{
    sessionBody(values, logWeights, lanes, session);
    return normaliseBody(logWeights, weights, lanes);
}

STEELYARD_WIDE_TARGET void weekWide(double* values, double* logWeights, double* weights, std::size_t lanes,
                                    const RegimeWeek& week)
{
    weekBody(values, logWeights, weights, lanes, week);
}

bool hasWideLanes()
{
    static const bool has = __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma");
    return has;
}
#endif

// The diagonal of every hypothesis' covariance is above zero. Debug builds ask after each step.
[[maybe_unused]] bool variancesArePositive(const double* values, std::size_t lanes)
{
    for (std::size_t i = 0; i < kStates; ++i)
        for (std::size_t lane = 0; lane < lanes; ++lane)
            if (!(values[covarianceRow(i, i) * lanes + lane] > 0)) return false;
    return true;
}

}  // namespace

double runRegimeSession(double* values, double* logWeights, double* weights, std::size_t lanes,
                        const RegimeSession& session)
{
    assert(lanes % kLaneWidth == 0 && lanes <= kRegimes * kMostAges && !session.sets.empty());
    double logLikelihood = 0;
#ifdef STEELYARD_WIDE
    if (hasWideLanes()) {
        logLikelihood = sessionWide(values, logWeights, weights, lanes, session);
    } else
#endif
    {
        sessionBody(values, logWeights, lanes, session);
        logLikelihood = normaliseBody(logWeights, weights, lanes);
    }
    assert(variancesArePositive(values, lanes));
    return logLikelihood;
}

void runRegimeWeek(double* values, double* logWeights, double* weights, std::size_t lanes, const RegimeWeek& week)
{
    assert(lanes % (kLaneWidth * kRegimes) == 0 && lanes <= kRegimes * kMostAges);
#ifdef STEELYARD_WIDE
    if (hasWideLanes())
        weekWide(values, logWeights, weights, lanes, week);
    else
#endif
        weekBody(values, logWeights, weights, lanes, week);
    assert(variancesArePositive(values, lanes));
}

}  // namespace steelyard
