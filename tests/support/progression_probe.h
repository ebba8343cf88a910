// Asks one progression rule what comes next, with loads in steps of 2.5 kg and a forecast written by hand.
//
//   ProgressionProbe probe{u"band_then_load"};
//   probe.input.exposures = {doneAt(40, {12, 12, 12})};
//   probe.next()->kind
#pragma once

#include "core/planning/progression_registry.h"

#include <cmath>

namespace steelyard::testing_support {

inline Load kilogramsOf(double kg)
{
    return Load::make(Decimal::nearest(kg, 3), MassUnit::kg).value();
}

inline DoneExposure doneAt(double kg, const std::vector<int>& reps, std::optional<double> rir = 2.0)
{
    DoneExposure sets;
    for (const int count : reps) sets.push_back({kilogramsOf(kg), count, false, rir});
    return sets;
}

// The first set is likely to bring so many at 40 kg, and two thirds of a repetition fewer with each kilogram and each set.
inline LikelySets likelyAtForty(double reps)
{
    return [reps](const Load& load, int number) -> std::optional<LikelySet> {
        const double expected = reps - (load.kilograms() - 40) / 1.5 - (number - 1) / 1.5;
        return LikelySet{static_cast<int>(std::floor(expected + 1e-9)), 0.75};
    };
}

struct ProgressionProbe {
    QString id;
    double step = 2.5;
    RuleSettings settings = {};
    ProgressionInput input = {{}, {8, 12}, 2.0, 3, {}};

    [[nodiscard]] const ProgressionRule& rule() const
    {
        const ProgressionRule* found = findProgression(id);
        if (!found) qFatal("No rule %s", qPrintable(id));
        return *found;
    }
    [[nodiscard]] std::optional<NextStep> next()
    {
        if (!input.stepper)
            input.stepper = [by = step](const Load& load, LoadChange change, Mass wish) -> std::optional<Load> {
                const double kg = std::max(by, by * std::round(toKilograms(wish) / by));
                return kilogramsOf(load.kilograms() + (change == LoadChange::Harder ? kg : -by));
            };
        return rule().next(input, RuleParameters(rule(), settings));
    }
};

[[nodiscard]] inline ProgressionProbe probeAfter(const QString& rule, std::vector<DoneExposure> exposures)
{
    ProgressionProbe probe{rule};
    probe.input.exposures = std::move(exposures);
    return probe;
}

}  // namespace steelyard::testing_support
