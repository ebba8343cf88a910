#include "core/numerics/regime_kernel.h"

#include "core/numerics/regime_session_loop.h"
#include "core/numerics/regime_week_loop.h"

#include <cassert>

namespace steelyard {
namespace {

template <class Real>
STEELYARD_LANES double sessionBody(RegimeMixture<Real> mixture, const RegimeSession& session)
{
    regime_kernel::takeSession(mixture, session);
    return regime_kernel::normalise(mixture);
}

template <class Real>
STEELYARD_LANES void weekBody(RegimeMixture<Real> mixture, const RegimeWeek& week)
{
    regime_kernel::passWeek(mixture, week);
}

template <class Real>
STEELYARD_LANES RegimeExpectation expectBody(const RegimeMixture<const Real>& of,
                                             const std::array<double, kRegimeStates>& g)
{
    return regime_kernel::expectation(of.values, of.weights, of.lanes, g);
}

#if defined(__x86_64__) && !defined(STEELYARD_PLAIN_LANES)
#define STEELYARD_WIDE 1
#define STEELYARD_WIDE_TARGET __attribute__((target("avx2,fma")))

template <class Real>
STEELYARD_WIDE_TARGET double sessionWide(RegimeMixture<Real> mixture, const RegimeSession& session)
{
    return sessionBody(mixture, session);
}

template <class Real>
STEELYARD_WIDE_TARGET void weekWide(RegimeMixture<Real> mixture, const RegimeWeek& week)
{
    weekBody(mixture, week);
}

template <class Real>
STEELYARD_WIDE_TARGET RegimeExpectation expectWide(const RegimeMixture<const Real>& of,
                                                   const std::array<double, kRegimeStates>& g)
{
    return expectBody(of, g);
}

bool hasWideLanes()
{
    static const bool has = __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma");
    return has;
}
#endif

// The diagonal of every hypothesis' covariance is above zero. Debug builds ask after each step.
template <class Real>
[[maybe_unused]] bool variancesArePositive(const RegimeMixture<Real>& of)
{
    for (std::size_t i = 0; i < kRegimeStates; ++i)
        for (std::size_t lane = 0; lane < of.lanes; ++lane)
            if (!(of.values[covarianceRow(i, i) * of.lanes + lane] > 0)) return false;
    return true;
}

template <class Real>
[[maybe_unused]] bool fits(const RegimeMixture<Real>& mixture)
{
    return mixture.lanes % (kLaneWidth<Real> * kRegimes) == 0 && mixture.lanes <= kRegimes * regime_kernel::kMostAges;
}

}  // namespace

template <class Real>
double runRegimeSession(RegimeMixture<Real> mixture, const RegimeSession& session)
{
    assert(fits(mixture) && !session.sets.empty());
    double logLikelihood = 0;
#ifdef STEELYARD_WIDE
    if (hasWideLanes())
        logLikelihood = sessionWide(mixture, session);
    else
#endif
        logLikelihood = sessionBody(mixture, session);
    assert(variancesArePositive(mixture));
    return logLikelihood;
}

template <class Real>
void runRegimeWeek(RegimeMixture<Real> mixture, const RegimeWeek& week)
{
    assert(fits(mixture));
#ifdef STEELYARD_WIDE
    if (hasWideLanes())
        weekWide(mixture, week);
    else
#endif
        weekBody(mixture, week);
    assert(variancesArePositive(mixture));
}

template <class Real>
RegimeExpectation expectRegimes(const RegimeMixture<const Real>& of, const std::array<double, kRegimeStates>& g)
{
#ifdef STEELYARD_WIDE
    if (hasWideLanes()) return expectWide(of, g);
#endif
    return expectBody(of, g);
}

template RegimeExpectation expectRegimes<float>(const RegimeMixture<const float>&,
                                                const std::array<double, kRegimeStates>&);
template RegimeExpectation expectRegimes<double>(const RegimeMixture<const double>&,
                                                 const std::array<double, kRegimeStates>&);
template double runRegimeSession(RegimeMixture<float>, const RegimeSession&);
template double runRegimeSession(RegimeMixture<double>, const RegimeSession&);
template void runRegimeWeek(RegimeMixture<float>, const RegimeWeek&);
template void runRegimeWeek(RegimeMixture<double>, const RegimeWeek&);

}  // namespace steelyard
