#include "core/analysis/line_numbers.h"

#include "core/numerics/distribution.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kNormal90 = 1.6448536269514722;  // two-sided 90 %

struct Bell {
    double weight = 0;
    double mean = 0;
    double sd = 0;
};

double quantileOf(const std::vector<Bell>& bells, double probability)
{
    double low = bells.front().mean;
    double high = low;
    for (const Bell& bell : bells) {
        low = std::min(low, bell.mean - 6 * bell.sd);
        high = std::max(high, bell.mean + 6 * bell.sd);
    }
    for (int step = 0; step < 40 && high - low > 1e-9; ++step) {
        const double middle = 0.5 * (low + high);
        double below = 0;
        for (const Bell& bell : bells) below += bell.weight * normalCdf((middle - bell.mean) / std::max(bell.sd, 1e-9));
        (below < probability ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

// b / lambda to first order.
Bell growthOf(const RegimeHypothesis& part, double weight)
{
    const double b = part.mean[1];
    const double lambda = part.mean[4];
    const double variance = part.covariance[1][1] - 2 * b / lambda * part.covariance[1][4]
                            + b * b / (lambda * lambda) * part.covariance[4][4];
    return {weight, b / lambda, std::sqrt(std::max(variance, 0.0)) / lambda};
}

}  // namespace

TrendRate rateOf(const LineTracker& tracker)
{
    std::vector<Bell> bells;
    TrendRate rate;
    const auto weights = tracker.caseWeights();
    for (std::size_t i = 0; i < weights.size(); ++i)
        for (const RegimeHypothesis& part : tracker.cases()[i].filter.regimes()) {
            const double weight = weights[i] * part.weight;
            if (!(weight > 0)) continue;
            bells.push_back(growthOf(part, weight));
            rate.perWeek += weight * bells.back().mean;
        }
    rate.low90 = quantileOf(bells, 0.05);
    rate.high90 = quantileOf(bells, 0.95);
    const RegimeChances chances = calibrated(*tracker.chances());
    rate.pRising = chances.rising;
    rate.pFalling = chances.falling;
    return rate;
}

double fastPaceOf(const LineTracker& tracker, std::optional<Experience> experience)
{
    const auto weights = tracker.caseWeights();
    double pace = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const Experience level = experience.value_or(tracker.cases()[i].experience);
        const RegimePace& usual = tracker.parameters().paces[static_cast<std::size_t>(level)];
        pace += weights[i] * (usual.mean + kNormal90 * usual.sd);
    }
    return pace / tracker.parameters().filter.elasticityMean;
}

CapacityEstimate capacityOf(const LineTracker& tracker, double bodyKg)
{
    const double single = zOfReps(1);
    double mean = 0;
    double second = 0;
    const auto weights = tracker.caseWeights();
    for (std::size_t i = 0; i < weights.size(); ++i)
        for (const RegimeLevel& part : tracker.cases()[i].filter.levels()) {
            const double weight = weights[i] * part.weight;
            if (!(weight > 0)) continue;
            const double lambda = part.elasticity;
            const double x = (part.level - single) / lambda;
            const double variance =
                (part.levelVariance - 2 * x * part.covariance + x * x * part.elasticityVariance) / (lambda * lambda);
            mean += weight * x;
            second += weight * (x * x + std::max(variance, 0.0));
        }
    const double reach = kNormal90 * std::sqrt(std::max(second - mean * mean, 0.0));
    const double ln = tracker.lnReference() + mean;
    return {std::exp(ln) - bodyKg, std::exp(ln - reach) - bodyKg, std::exp(ln + reach) - bodyKg};
}

double elasticityOf(const LineTracker& tracker)
{
    const auto weights = tracker.caseWeights();
    double lambda = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) lambda += weights[i] * tracker.cases()[i].filter.meanElasticity();
    return lambda;
}

double fatigueOf(const LineTracker& tracker)
{
    const auto weights = tracker.caseWeights();
    double phi = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) phi += weights[i] * tracker.cases()[i].filter.meanFatigue();
    return phi;
}

Onset onsetOf(const LineTracker& tracker, QDate day)
{
    const auto weights = tracker.caseWeights();
    std::vector<double> byAge(static_cast<std::size_t>(tracker.parameters().filter.ages), 0.0);
    double total = 0;
    double mean = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const auto one = tracker.cases()[i].filter.notRisingByAge();
        for (std::size_t age = 0; age < one.size(); ++age) {
            byAge[age] += weights[i] * one[age];
            total += weights[i] * one[age];
            mean += weights[i] * one[age] * static_cast<double>(age);
        }
    }
    const auto ageAt = [&](double share) {
        double sum = 0;
        for (std::size_t age = 0; age < byAge.size(); ++age) {
            sum += byAge[age];
            if (sum >= share * total) return age;
        }
        return byAge.size() - 1;
    };
    const auto before = [&](double weeks) { return day.addDays(-std::lround(7 * weeks)); };
    Onset onset{before(total > 0 ? mean / total : 0), {}, before(static_cast<double>(ageAt(0.1)))};
    const std::size_t oldest = ageAt(0.9);
    if (oldest + 1 < byAge.size()) onset.earliest = before(static_cast<double>(oldest));
    // A word that has stood for weeks began when it was first read, not within the filter's memory.
    for (auto week = tracker.weeks().rbegin(); week != tracker.weeks().rend(); ++week) {
        const bool down = week->verdict == Verdict::Stalled || week->verdict == Verdict::Slipping;
        const bool silent = isOfTheCalendar(week->reason);
        if (!down && !silent) break;
        if (!down) continue;
        const QDate then = lastDayOfWeek(week->week).addDays(-std::lround(7 * week->weeksNotRising));
        if (then < onset.since) onset.since = then;
    }
    if (onset.earliest && onset.since < *onset.earliest) onset.earliest.reset();
    onset.latest = std::max(onset.latest, onset.since);
    return onset;
}

double weeksToTell(const LineTracker& tracker, double exposuresAWeek)
{
    const auto weights = tracker.caseWeights();
    const RegimeParameters& p = tracker.parameters().filter;
    double pace = 0;
    double noise = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const TrackedCase& one = tracker.cases()[i];
        pace += weights[i] * tracker.parameters().paces[static_cast<std::size_t>(one.experience)].mean;
        noise += weights[i] * one.noise;
    }
    const double sessions = std::max(exposuresAWeek, 0.25);
    const double variance =
        noise * noise
        * ((p.dayNoise * p.dayNoise + p.setNoise * p.setNoise / 2) / sessions + p.weekNoise * p.weekNoise);
    return std::cbrt(6 * variance * std::log(52.0) / (pace * pace));
}

}  // namespace steelyard
