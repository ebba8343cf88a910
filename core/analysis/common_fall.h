// Whether most lines of one lifter fall together, for one reason, rather than each on its own: what no line says alone.
//
//   const std::vector<FallWitness> lines{{{0.1, 0.3, 0.6}, 2}, {{0.2, 0.3, 0.5}, 3}, {{0.1, 0.2, 0.7}, 2}};
//   const CommonFall fall = commonFall(lines, usualChances(parameters.filter));
//   fall.probability;   // that one reason is behind it
//   fall.falls[0];      // that the first line takes part
//
// Two explanations are compared by Bayes' rule. With p(r) what a line's filter states of regime r (rising, flat, falling)
// and u(r) what it states of a line before its record speaks, p(r) / u(r) is proportional to the likelihood of the record.
//   apart    every line has its own regime, drawn from u:        L = sum over r of u(r) p(r) / u(r) = 1
//   common   every line draws from c, mostly falling:            L = sum over r of c(r) p(r) / u(r)
// A line that plainly rises has L < 1 under a common reason and so speaks against it. Lines of one lifter share the week's
// readiness, so n of them are worth n / (1 + (n - 1) rho) independent ones (the design effect of cluster samples; Kish
// 1965, Survey Sampling; from memory):
//   ln odds = ln(prior / (1 - prior)) + sum of ln L / (1 + (n - 1) rho)
//   P(a line falls | common) = c(falling) p(falling) / u(falling) / L
// A line that by its own record rises more likely than not is never counted in, whatever the others do.
// It says nothing about the reason, and nothing about health.
//
// Pure; no failures. Fewer witnesses than `leastLines`: probability 0.
#pragma once

#include "core/analysis/line_reading.h"
#include "core/numerics/regime_parameters.h"

#include <span>

namespace steelyard {

// All of them our convention, set on made-up lifters with six lines of two sessions a week and tried on others of the kind
// (figures of both together). Of 180 whose lines went their own ways 4 were said to fall together at some week of 32. Of 120
// whose lines all fell by 0.7 % a week 38 were found within five weeks and 102 within eight. Of 120 with one falling line in
// six 2 were said to fall together at some week of the eight or ten of its fall.
struct CommonFallPriors {
    double atWork = 0.02;                   // share of weeks in which a common reason is at work: one in a year
    RegimeChances lines{0.05, 0.15, 0.80};  // c: what lines do under one
    double likeness = 0.10;                 // rho
    double takesPart = 2.0 / 3.0;           // least P(a line falls | common) to be counted in
    std::size_t leastLines = 3;
    int recentDays = 21;  // a line that was not trained for longer is no witness
};

struct FallWitness {
    RegimeChances stated;
    qint64 daysSinceTrained = 0;
};

struct CommonFall {
    double probability = 0;
    std::vector<bool> falls;  // by witness: takes part
    std::size_t witnesses = 0;

    // Most of the witnesses take part.
    [[nodiscard]] bool isOfMost() const;
};

// What the filter states of a line when it has heard nothing for a long time.
[[nodiscard]] RegimeChances usualChances(const RegimeParameters&);

[[nodiscard]] CommonFall commonFall(std::span<const FallWitness>, const RegimeChances& usual,
                                    const CommonFallPriors& = {});

}  // namespace steelyard
