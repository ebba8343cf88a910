#include "core/numerics/rep_max.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

// Sources: kRepMaxEquations in the header. Brzycki in the printed form with 1.0278 and 0.0278, not 36/(37 - r).
double maxPerLoad(RepMaxEquation equation, double reps)
{
    switch (equation) {
    case RepMaxEquation::Epley: return 1.0 + reps / 30.0;
    case RepMaxEquation::Brzycki: return 1.0 / (1.0278 - 0.0278 * reps);
    case RepMaxEquation::Lander: return 100.0 / (101.3 - 2.67123 * reps);
    case RepMaxEquation::Lombardi: return std::pow(reps, 0.10);
    case RepMaxEquation::Mayhew: return 100.0 / (52.2 + 41.9 * std::exp(-0.055 * reps));
    case RepMaxEquation::OConnor: return 1.0 + 0.025 * reps;
    case RepMaxEquation::Wathan: return 100.0 / (48.8 + 53.8 * std::exp(-0.075 * reps));
    }
    return std::nan("");
}

// The inverse of 1 / maxPerLoad. Not a number where an exponential form's floor is reached.
double repsForFraction(RepMaxEquation equation, double fraction)
{
    switch (equation) {
    case RepMaxEquation::Epley: return 30.0 * (1.0 / fraction - 1.0);
    case RepMaxEquation::Brzycki: return (1.0278 - fraction) / 0.0278;
    case RepMaxEquation::Lander: return (101.3 - 100.0 * fraction) / 2.67123;
    case RepMaxEquation::Lombardi: return std::pow(fraction, -10.0);
    case RepMaxEquation::Mayhew: return -std::log((100.0 * fraction - 52.2) / 41.9) / 0.055;
    case RepMaxEquation::OConnor: return (1.0 / fraction - 1.0) / 0.025;
    case RepMaxEquation::Wathan: return -std::log((100.0 * fraction - 48.8) / 53.8) / 0.075;
    }
    return std::nan("");
}

bool inRange(RepMaxEquation equation, double reps)
{
    return reps >= 1.0 && reps <= mostReps(equation);
}

double factorFor(RepMaxEquation equation, double reps)
{
    return reps == 1.0 ? 1.0 : maxPerLoad(equation, reps);
}

}  // namespace

const RepMaxInfo& info(RepMaxEquation equation)
{
    return kRepMaxEquations[static_cast<std::size_t>(equation)];
}

double mostReps(RepMaxEquation equation)
{
    return info(equation).mostReps;
}

std::optional<double> oneRepMax(RepMaxEquation equation, double loadKg, double repsToFailure)
{
    if (!(loadKg > 0.0) || !std::isfinite(loadKg) || !inRange(equation, repsToFailure)) return std::nullopt;
    return loadKg * factorFor(equation, repsToFailure);
}

std::optional<double> loadForReps(RepMaxEquation equation, double oneRepMaxKg, double repsToFailure)
{
    if (!(oneRepMaxKg > 0.0) || !std::isfinite(oneRepMaxKg) || !inRange(equation, repsToFailure)) return std::nullopt;
    return oneRepMaxKg / factorFor(equation, repsToFailure);
}

std::optional<double> repsAtFraction(RepMaxEquation equation, double fractionOfMax)
{
    if (!(fractionOfMax > 0.0 && fractionOfMax <= 1.0)) return std::nullopt;
    const double reps = repsForFraction(equation, fractionOfMax);
    if (!(reps <= mostReps(equation))) return std::nullopt;  // also not a number
    return std::max(1.0, reps);
}

bool usableForEstimate(RepMaxEquation equation, int countedReps, std::optional<double> repsInReserve)
{
    return countedReps >= 1 && repsInReserve && *repsInReserve >= 0.0 && *repsInReserve <= kMostReserveForEstimate
           && inRange(equation, countedReps + *repsInReserve);
}

std::optional<int> handbookPercent(int reps)
{
    for (const PercentRow& row : kHandbookPercents)
        if (row.reps == reps) return row.percentOfMax;
    return std::nullopt;
}

}  // namespace steelyard
