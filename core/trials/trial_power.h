// What a planned trial can find: how often it ends with the right word, for a difference of a given size.
//
//   trialPower({.arms = 2, .blocks = 8}, 1.0).prefersRight     == 0.54
//   blocksFor(2, 1.0, 0.8)                                     == 16
//
// The difference is that of the best arm to the others (which are alike), in SDs of one lifter's sessions, about 1.2 points of
// a 0-10 rating. The numbers come from simulated trials under the rule in use (trial_decision.h), looked at after every block:
// whole ratings, a drift of half an SD, sessions alike from one to the next by 0.3. They stand in a table written by
// `trial_errors --table`; between its rows and columns values are interpolated.
//
// Units: shares of trials 0-1; sessions. Pure; no failures: what lies outside the table is taken at its edge.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace steelyard {

struct TrialDesign {
    std::size_t arms = 2;
    int blocks = 6;  // sessions an arm
};

struct TrialPower {
    double prefersRight = 0;  // ends with "prefer" for the best arm
    double prefersWrong = 0;  // for another one
    double meanSessions = 0;  // of all arms together, until it says so or the planned ones are done
    // Two arms, all planned sessions done: the two-sided exact randomisation test at 0.05. 0 where so few blocks can't reach it.
    std::optional<double> randomisation;
};

// Differences and blocks that the table holds; for charts.
[[nodiscard]] std::vector<double> powerDifferences();  // SDs, ascending from 0
[[nodiscard]] std::vector<int> powerBlocks();          // ascending

[[nodiscard]] TrialPower trialPower(const TrialDesign&, double differenceSds);
// Fewest blocks with at least that chance of the right "prefer"; absent when the table's longest trial isn't enough.
[[nodiscard]] std::optional<int> blocksFor(std::size_t arms, double differenceSds, double chance = 0.8);
// Smallest difference that the design finds with that chance; absent when it finds none of the table so often.
[[nodiscard]] std::optional<double> smallestFound(const TrialDesign&, double chance = 0.8);

}  // namespace steelyard
