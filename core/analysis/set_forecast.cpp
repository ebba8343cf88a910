#include "core/analysis/set_forecast.h"

#include "core/numerics/calibration_curve.h"
#include "core/numerics/distribution.h"
#include "core/numerics/student.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kLeastWeightOfPart = 1e-7;
constexpr int kMostSteps = 60;

// How often sets fell outside, on either side, against what the mixture stated: 9354 first sets of the simulated lifters
// that the filter's numbers were fitted to, symmetric by averaging both tails. Its tails are a little too wide.
constexpr std::array<CalibrationKnot, 9> kTailCame{{{0, 0},
                                                    {0.005, 0.0014},
                                                    {0.01, 0.0040},
                                                    {0.025, 0.0140},
                                                    {0.05, 0.0362},
                                                    {0.1, 0.0877},
                                                    {0.15, 0.1435},
                                                    {0.2, 0.1999},
                                                    {0.5, 0.5}}};

// Of the lower half of the distribution; the upper one mirrors it.
double lowerHalf(double probability, double (*along)(std::span<const CalibrationKnot>, double))
{
    return probability <= 0.5 ? along(kTailCame, probability) : 1 - along(kTailCame, 1 - probability);
}

}  // namespace

SetForecast::SetForecast(const std::vector<PredictedComponent>& components, double tail) : m_tail(tail)
{
    double sum = 0;
    for (const PredictedComponent& one : components)
        if (one.weight > kLeastWeightOfPart) {
            m_components.push_back(one);
            sum += one.weight;
        }
    for (PredictedComponent& one : m_components) one.weight /= sum;
}

double SetForecast::rawCdf(double z) const
{
    // Student-t with this standard deviation, not this scale.
    const double scale = std::sqrt((m_tail - 2) / m_tail);
    double sum = 0;
    for (const PredictedComponent& one : m_components)
        sum += one.weight * studentCdf((z - one.mean) / (one.sd * scale), m_tail);
    return sum;
}

double SetForecast::cdf(double z) const
{
    return lowerHalf(rawCdf(z), &cameTrue);
}

// Where a normal of the mixture's mean and standard deviation has it: near enough to begin there.
double SetForecast::nearby(double probability, double& sd) const
{
    double mean = 0;
    double square = 0;
    for (const PredictedComponent& one : m_components) {
        mean += one.weight * one.mean;
        square += one.weight * (one.mean * one.mean + one.sd * one.sd);
    }
    sd = std::sqrt(std::max(square - mean * mean, 1e-12));
    return mean + sd * normalQuantile(std::clamp(probability, 1e-6, 1 - 1e-6));
}

double SetForecast::quantile(double wanted) const
{
    const double probability = lowerHalf(wanted, &statedFor);
    double least = m_components.front().mean;
    double most = least;
    for (const PredictedComponent& one : m_components) {
        least = std::min(least, one.mean - 8 * one.sd);
        most = std::max(most, one.mean + 8 * one.sd);
    }
    // Ends on both sides of it: every evaluation is dear, so they are sought near the guess, in longer and longer steps.
    double step = 0;
    double low = std::clamp(nearby(probability, step), least, most);
    step *= 0.25;
    double high = low;
    double atLow = rawCdf(low) - probability;
    double atHigh = atLow;
    while (atLow > 0 && low > least) {
        high = low;
        atHigh = atLow;
        low = std::max(least, low - step);
        atLow = rawCdf(low) - probability;
        step *= 2;
    }
    while (atHigh < 0 && high < most) {
        low = high;
        atLow = atHigh;
        high = std::min(most, high + step);
        atHigh = rawCdf(high) - probability;
        step *= 2;
    }
    if (atLow >= 0) return low;
    if (atHigh <= 0) return high;
    // Regula falsi with halved ends (Illinois): the distribution rises strictly.
    int side = 0;
    for (int turn = 0; turn < kMostSteps && high - low > 1e-7; ++turn) {
        const double z = (atLow * high - atHigh * low) / (atLow - atHigh);
        const double at = rawCdf(z) - probability;
        if (std::abs(at) < 1e-7) return z;
        if (at > 0) {
            high = z;
            atHigh = at;
            if (side == 1) atLow *= 0.5;
            side = 1;
        } else {
            low = z;
            atLow = at;
            if (side == -1) atHigh *= 0.5;
            side = -1;
        }
    }
    return 0.5 * (low + high);
}

double SetForecast::reps(double probability) const
{
    return std::max(0.0, repsOfZ(quantile(probability)));
}

double SetForecast::probabilityOver(double reps) const
{
    return 1 - cdf(zOfReps(std::max(0.0, reps)));
}

SetForecast forecastOfCases(std::span<const TrackedCase> cases, std::span<const double> weights, QDate day,
                            const RegimeObservation& set, double shift, double tail)
{
    std::vector<PredictedComponent> all;
    for (std::size_t i = 0; i < weights.size(); ++i)
        for (PredictedComponent one : cases[i].filter.predictByRegime(static_cast<double>(day.toJulianDay()), set)) {
            one.weight *= weights[i];
            one.mean += shift;
            all.push_back(one);
        }
    return {all, tail};
}

SetForecast forecastSet(const LineTracker& tracker, QDate day, double lnLoad, int number, double repError)
{
    return forecastOfCases(tracker.cases(), tracker.caseWeights(), day,
                           {lnLoad, 0, repError, ObservationKind::Exact, fatigueOfSet(number)},
                           tracker.weekdays().effectOn(day), tracker.parameters().filter.tail);
}

double reserveReps(double rir)
{
    return rir < 0.5 ? 0.5 : 0.45 + 1.1 * rir;
}

}  // namespace steelyard
