// How large a step of load is: what the handbooks print, what it costs in repetitions, and what this gym makes of it.
//
//   const Mass wish = massFromGrams(2'000);
//   steppedLoad(finder, variant, *Load::parse(u"40", MassUnit::kg), LoadChange::Harder, wish, 0)   == 42.5 kg
//
// A rise is at most kMostRise of what is moved, unless the smallest step there is is larger.
// Units: kilograms. Pure. Failures: nullopt at the end of what can be loaded.
#pragma once

#include "core/planning/progression_rule.h"

namespace steelyard {

// ACSM 2009 (Ratamess et al., MSSE 41(3):687-708): 2 to 10 % when the load can be done one or two repetitions over the goal.
inline constexpr double kMostRise = 0.10;

// The load that most of the sets used; of two equally used the heavier. nullopt for no sets.
[[nodiscard]] std::optional<Load> workingLoad(const DoneExposure& exposure);
[[nodiscard]] DoneExposure setsAt(const DoneExposure& exposure, Mass mass);

// Two or more repetitions over the goal in the last set of two consecutive sessions at one load: add load.
// Source: the 2-for-2 rule of Graves & Baechle, as in Baechle & Earle, Essentials.
[[nodiscard]] bool twoForTwo(const DoneExposure& previous, const DoneExposure& latest, int goalReps);

// Repetitions that a rise from one load to another costs at an unchanged maximum; arithmetic on Epley's equation:
// (30 + reps) s / (1 + s) with s the rise as a fraction. 12 repetitions and 5 % cost 2.0.
[[nodiscard]] double repCostOfStep(Mass from, Mass to, double reps);

// The change of what is moved, as a share of it: 0.05 from 40 to 42 kg on a bar. `bodyKg` as in SetContext.
[[nodiscard]] double riseOf(const Variant& variant, const Load& from, const Load& to, double bodyKg);

// See LoadStepper. `bodyKg`: kilograms of the lifter that the loading adds to the load.
[[nodiscard]] std::optional<Load> steppedLoad(const LoadFinder& loads, const Variant& variant, const Load& current,
                                              LoadChange change, Mass wish, double bodyKg);

struct PublishedLoadStep {
    bool moreTrained;  // larger, stronger, more trained
    bool lowerBody;
    double leastKg, mostKg;
    double leastLb, mostLb;
    bool orMore;  // the source adds "or more"
};

// Source: NSCA Essentials of Strength Training and Conditioning, ch. 17, load increases of the 2-for-2 rule.
// The figures are from memory; only the upper-body rows were seen repeated elsewhere.
inline constexpr std::array<PublishedLoadStep, 4> kPublishedLoadSteps{{
    {false, false, 1, 2, 2.5, 5, false},
    {false, true, 2, 4, 5, 10, false},
    {true, false, 2, 4, 5, 10, true},
    {true, true, 4, 7, 10, 15, true},
}};

[[nodiscard]] const PublishedLoadStep& publishedLoadStep(bool moreTrained, bool lowerBody);

}  // namespace steelyard
