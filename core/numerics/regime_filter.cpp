#include "core/numerics/regime_filter.h"

#include "core/numerics/distribution.h"
#include "core/numerics/regime_kernel.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace steelyard {
namespace {

constexpr double kDaysOfWeek = 7;
constexpr double kLeastVariance = 1e-14;
template <class Real>
constexpr Real kNoWeight = sizeof(Real) == sizeof(double) ? -700 : -80;  // ln
constexpr double kLeastMixtureWeight = 1e-7;                             // what weighs less can't be seen in a mean

double square(double x)
{
    return x * x;
}

}  // namespace

double fatigueOfSet(int number)
{
    return (1 - std::pow(0.8, number - 1)) / 0.2;
}

namespace {

RegimeLogs logsOf(const RegimeParameters& p)
{
    const double nu = p.tail;
    return {std::log(1 - p.offShare), std::log(p.offShare),
            std::lgamma((nu + 1) / 2) - std::lgamma(nu / 2) - 0.5 * std::log(std::numbers::pi * (nu - 2))};
}

}  // namespace

template <class Real>
RegimeFilterOf<Real>::RegimeFilterOf(const RegimeParameters& parameters, RegimePace pace, double noise)
    : m_parameters(&parameters),
      m_pace(pace),
      m_noise(noise),
      m_elasticityMean(parameters.elasticityMean),
      m_elasticitySd(parameters.elasticitySd),
      m_lanes(kRegimes * static_cast<std::size_t>(parameters.ages)),
      m_logs(logsOf(parameters))
{
    assert(parameters.ages % 8 == 0 && parameters.ages >= 8);
}

template <class Real>
void RegimeFilterOf<Real>::expectElasticity(double mean, double sd)
{
    assert(!started());
    m_elasticityMean = mean;
    m_elasticitySd = sd;
}

template <class Real>
void RegimeFilterOf<Real>::start(const RegimeObservation& first)
{
    const RegimeParameters& p = *m_parameters;
    const std::array<double, kRegimes> paceMean{m_pace.mean, 0, p.fallMean};
    const std::array<double, kRegimes> paceSd{m_pace.sd, p.flatSd, p.fallSd};
    const auto ages = static_cast<std::size_t>(p.ages);
    m_values.assign(kRegimeRows * m_lanes, Real(0));
    // Only the youngest of each regime is possible; the others hold the same numbers at no weight.
    m_logWeights.assign(m_lanes, kNoWeight<Real>);
    m_weights.assign(m_lanes, Real(0));
    for (std::size_t lane = 0; lane < m_lanes; ++lane) {
        const std::size_t mode = lane / ages;
        const auto put = [&](std::size_t row, double value) {
            m_values[row * m_lanes + lane] = static_cast<Real>(value);
        };
        put(0, first.z + m_elasticityMean * first.lnLoad);
        put(1, paceMean[mode]);
        put(4, m_elasticityMean);
        put(5, p.fatigueMean);
        put(covarianceRow(0, 0), square(p.startSd));
        put(covarianceRow(1, 1), square(paceSd[mode]));
        put(covarianceRow(2, 2), square(p.weekNoise * m_noise));
        put(covarianceRow(3, 3), square(p.dayNoise * m_noise));
        put(covarianceRow(4, 4), square(m_elasticitySd));
        put(covarianceRow(5, 5), square(p.fatigueSd));
        if (lane % ages == 0) {
            m_weights[lane] = static_cast<Real>(p.start[mode]);
            m_logWeights[lane] = static_cast<Real>(std::log(p.start[mode]));
        }
    }
}

template <class Real>
void RegimeFilterOf<Real>::startWeek()
{
    if (!started()) return;
    runRegimeWeek<Real>({m_values.data(), m_logWeights.data(), m_weights.data(), m_lanes},
                        {square(m_parameters->weekNoise * m_noise), m_pace, m_parameters});
}

namespace {

RegimeStep stepOver(double weeks, const RegimeParameters& p, double noise)
{
    const bool gap = weeks > p.gapWeeks;
    RegimeStep step;
    step.growWeeks = gap ? 0 : weeks;
    step.levelShift = gap ? -p.gapLossAWeek * std::max(0.0, weeks - p.gapLossAfterWeeks) : 0;
    step.levelVariance = square(p.levelNoise) * weeks + (gap ? square(p.gapSd) : 0);
    step.dayVariance = square(p.dayNoise * noise);
    return step;
}

}  // namespace

template <class Real>
void RegimeFilterOf<Real>::session(double day, std::span<const RegimeObservation> sets)
{
    assert(!sets.empty());
    if (!started()) {
        start(sets.front());
        m_lastDay = day;
    }
    assert(day >= m_lastDay);
    const double weeks = (day - m_lastDay) / kDaysOfWeek;
    m_lastDay = day;
    m_logLikelihood += runRegimeSession<Real>({m_values.data(), m_logWeights.data(), m_weights.data(), m_lanes},
                                              {stepOver(weeks, *m_parameters, m_noise), sets,
                                               square(m_parameters->setNoise * m_noise), m_logs, m_parameters});
}

template <class Real>
std::array<double, kRegimes> RegimeFilterOf<Real>::probabilities() const
{
    assert(started());
    std::array<double, kRegimes> sums{};
    const std::size_t ages = m_lanes / kRegimes;
    for (std::size_t mode = 0; mode < kRegimes; ++mode)
        for (std::size_t age = 0; age < ages; ++age) sums[mode] += static_cast<double>(m_weights[mode * ages + age]);
    // The weights sum to one as well as their digits allow; the sums do better.
    const double all = sums[0] + sums[1] + sums[2];
    for (double& sum : sums) sum /= all;
    return sums;
}

template <class Real>
std::vector<double> RegimeFilterOf<Real>::notRisingByAge() const
{
    assert(started());
    const std::size_t ages = m_lanes / kRegimes;
    std::vector<double> byAge(ages, 0.0);
    for (std::size_t mode = 1; mode < kRegimes; ++mode)
        for (std::size_t age = 0; age < ages; ++age) byAge[age] += static_cast<double>(m_weights[mode * ages + age]);
    return byAge;
}

template <class Real>
double RegimeFilterOf<Real>::meanElasticity() const
{
    assert(started());
    double sum = 0;
    for (std::size_t lane = 0; lane < m_lanes; ++lane) sum += m_weights[lane] * m_values[4 * m_lanes + lane];
    return sum;
}

template <class Real>
double RegimeFilterOf<Real>::meanFatigue() const
{
    assert(started());
    double sum = 0;
    for (std::size_t lane = 0; lane < m_lanes; ++lane) sum += m_weights[lane] * m_values[5 * m_lanes + lane];
    return sum;
}

template <class Real>
std::vector<RegimeHypothesis> RegimeFilterOf<Real>::hypotheses() const
{
    assert(started());
    std::vector<RegimeHypothesis> all(m_lanes);
    const std::size_t ages = m_lanes / kRegimes;
    for (std::size_t lane = 0; lane < m_lanes; ++lane) {
        RegimeHypothesis& one = all[lane];
        one.regime = static_cast<Regime>(lane / ages);
        one.age = static_cast<int>(lane % ages);
        one.weight = m_weights[lane];
        for (std::size_t i = 0; i < kRegimeStates; ++i) {
            one.mean[i] = m_values[i * m_lanes + lane];
            for (std::size_t j = i; j < kRegimeStates; ++j)
                one.covariance[i][j] = one.covariance[j][i] = m_values[covarianceRow(i, j) * m_lanes + lane];
        }
    }
    return all;
}

template <class Real>
RegimeSummary RegimeFilterOf<Real>::summary(double delta) const
{
    assert(started());
    RegimeSummary out;
    out.probability = probabilities();
    const std::size_t ages = m_lanes / kRegimes;
    const auto at = [&](std::size_t row, std::size_t lane) {
        return static_cast<double>(m_values[row * m_lanes + lane]);
    };
    double notRising = 0;
    for (std::size_t lane = 0; lane < m_lanes; ++lane) {
        const double w = m_weights[lane];
        out.level += w * at(0, lane);
        out.slope += w * at(1, lane);
        out.elasticity += w * at(4, lane);
        out.fatigue += w * at(5, lane);
        const double variance = at(covarianceRow(1, 1), lane) - 2 * delta * at(covarianceRow(1, 4), lane)
                                + delta * delta * at(covarianceRow(4, 4), lane);
        out.probabilitySlopeOver +=
            w * normalCdf((at(1, lane) - delta * at(4, lane)) / std::sqrt(std::max(variance, kLeastVariance)));
        if (lane < ages) continue;
        notRising += w;
        out.weeksNotRising += w * static_cast<double>(lane % ages);
    }
    out.weeksNotRising = notRising > 0 ? out.weeksNotRising / notRising : 0;
    const auto sdOf = [&](std::size_t i, double mean) {
        double variance = 0;
        for (std::size_t lane = 0; lane < m_lanes; ++lane)
            variance += m_weights[lane] * (at(covarianceRow(i, i), lane) + square(at(i, lane) - mean));
        return std::sqrt(variance);
    };
    out.levelSd = sdOf(0, out.level);
    out.slopeSd = sdOf(1, out.slope);
    out.elasticitySd = sdOf(4, out.elasticity);
    return out;
}

template <class Real>
std::vector<RegimeHypothesis> RegimeFilterOf<Real>::regimes() const
{
    std::vector<RegimeHypothesis> out(kRegimes);
    const auto all = hypotheses();
    const std::size_t ages = m_lanes / kRegimes;
    for (std::size_t mode = 0; mode < kRegimes; ++mode) {
        RegimeHypothesis& one = out[mode];
        const std::span<const RegimeHypothesis> part(all.data() + mode * ages, ages);
        one.regime = static_cast<Regime>(mode);
        double meanAge = 0;
        for (const RegimeHypothesis& h : part) one.weight += h.weight;
        for (const RegimeHypothesis& h : part) {
            const double share = one.weight > 0 ? h.weight / one.weight : 1.0 / static_cast<double>(ages);
            meanAge += share * h.age;
            for (std::size_t i = 0; i < kRegimeStates; ++i) one.mean[i] += share * h.mean[i];
        }
        for (const RegimeHypothesis& h : part) {
            const double share = one.weight > 0 ? h.weight / one.weight : 1.0 / static_cast<double>(ages);
            for (std::size_t i = 0; i < kRegimeStates; ++i)
                for (std::size_t j = 0; j < kRegimeStates; ++j)
                    one.covariance[i][j] +=
                        share * (h.covariance[i][j] + (h.mean[i] - one.mean[i]) * (h.mean[j] - one.mean[j]));
        }
        one.age = static_cast<int>(std::lround(meanAge));
    }
    return out;
}

template <class Real>
std::array<RegimeLevel, kRegimes> RegimeFilterOf<Real>::levels() const
{
    assert(started());
    constexpr std::size_t kLevel = 0;
    constexpr std::size_t kElasticity = 4;
    std::array<RegimeLevel, kRegimes> out;
    const std::size_t ages = m_lanes / kRegimes;
    const auto at = [&](std::size_t row, std::size_t lane) {
        return static_cast<double>(m_values[row * m_lanes + lane]);
    };
    for (std::size_t mode = 0; mode < kRegimes; ++mode) {
        RegimeLevel& one = out[mode];
        const std::size_t first = mode * ages;
        for (std::size_t lane = first; lane < first + ages; ++lane) one.weight += static_cast<double>(m_weights[lane]);
        const auto shareOf = [&](std::size_t lane) {
            return one.weight > 0 ? static_cast<double>(m_weights[lane]) / one.weight : 1.0 / static_cast<double>(ages);
        };
        for (std::size_t lane = first; lane < first + ages; ++lane) {
            one.level += shareOf(lane) * at(kLevel, lane);
            one.elasticity += shareOf(lane) * at(kElasticity, lane);
        }
        for (std::size_t lane = first; lane < first + ages; ++lane) {
            const double share = shareOf(lane);
            const double level = at(kLevel, lane) - one.level;
            const double elasticity = at(kElasticity, lane) - one.elasticity;
            one.levelVariance += share * (at(covarianceRow(kLevel, kLevel), lane) + level * level);
            one.covariance += share * (at(covarianceRow(kLevel, kElasticity), lane) + level * elasticity);
            one.elasticityVariance +=
                share * (at(covarianceRow(kElasticity, kElasticity), lane) + elasticity * elasticity);
        }
    }
    return out;
}

template <class Real>
std::vector<PredictedComponent> RegimeFilterOf<Real>::predict(double day, const RegimeObservation& set) const
{
    return predictFrom(hypotheses(), day, set);
}

template <class Real>
std::vector<PredictedComponent> RegimeFilterOf<Real>::predictByRegime(double day, const RegimeObservation& set) const
{
    return predictFrom(regimes(), day, set);
}

template <class Real>
PredictedComponent RegimeFilterOf<Real>::expect(double day, const RegimeObservation& set) const
{
    assert(started());
    const RegimeParameters& p = *m_parameters;
    const RegimeStep step = stepOver((day - m_lastDay) / kDaysOfWeek, p, m_noise);
    const std::array<double, kRegimeStates> g{1, step.growWeeks, 1, 0, -set.lnLoad, -set.fatigue};
    const RegimeExpectation all =
        expectRegimes<Real>({m_values.data(), m_logWeights.data(), m_weights.data(), m_lanes}, g);
    const double rest =
        step.levelVariance + step.dayVariance + square(p.setNoise * m_noise) + square(p.repErrorShare * set.repError);
    return {1, all.mean + step.levelShift, std::sqrt(std::max(all.variance, 0.0) + rest)};
}

template <class Real>
std::vector<PredictedComponent> RegimeFilterOf<Real>::predictFrom(const std::vector<RegimeHypothesis>& parts,
                                                                  double day, const RegimeObservation& set) const
{
    assert(started());
    const RegimeParameters& p = *m_parameters;
    const RegimeStep step = stepOver((day - m_lastDay) / kDaysOfWeek, p, m_noise);
    const std::array<double, kRegimeStates> h{1, 0, 1, 1, -set.lnLoad, -set.fatigue};
    const double setVariance = square(p.setNoise * m_noise) + square(p.repErrorShare * set.repError);
    std::vector<PredictedComponent> out;
    out.reserve(2 * parts.size());
    for (const RegimeHypothesis& one : parts) {
        // h' F: the level at the set's day is today's plus b over the weeks.
        std::array<double, kRegimeStates> g = h;
        g[1] += step.growWeeks;
        g[3] = 0;
        double mean = step.levelShift;
        double variance = step.levelVariance + step.dayVariance + setVariance;
        for (std::size_t i = 0; i < kRegimeStates; ++i) {
            mean += g[i] * one.mean[i];
            for (std::size_t j = 0; j < kRegimeStates; ++j) variance += g[i] * one.covariance[i][j] * g[j];
        }
        out.push_back({one.weight * (1 - p.offShare), mean, std::sqrt(variance)});
        out.push_back({one.weight * p.offShare, mean + p.offMean, std::sqrt(variance + square(p.offSd))});
    }
    return out;
}

template class RegimeFilterOf<float>;
template class RegimeFilterOf<double>;

}  // namespace steelyard
