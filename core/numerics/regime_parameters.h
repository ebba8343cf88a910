// The numbers of the regime filter. Defaults: pooled maximum likelihood on simulated lifters whose noise was taken from
// published repeatability (regime_filter.h), rounded. They may be fitted anew to a roster's own record.
//
// Units: z = ln(1 + repetitions to failure / 30), weeks.
#pragma once

#include <array>

namespace steelyard {

// How fast z rises in a rising segment.
struct RegimePace {
    double mean = 0.0056;
    double sd = 0.0019;
    friend bool operator==(const RegimePace&, const RegimePace&) = default;
};

struct RegimeParameters {
    int ages = 16;  // weeks of a segment that are told apart; a multiple of 8, at most 32
    double dayNoise = 0.027;
    double setNoise = 0.018;
    double weekNoise = 0.0115;
    double weekMemory = 0.6;     // how much of a week's readiness is left the week after
    double levelNoise = 0.001;   // a root week
    double tail = 3.5;           // degrees of freedom of the sets' errors
    double repErrorShare = 0.9;  // how much of the stated error of counting is taken
    double startSd = 0.15;
    double elasticityMean = 1.18;
    double elasticitySd = 0.15;
    double fatigueMean = 0.023;
    double fatigueSd = 0.018;
    double flatSd = 0.0004;
    double fallMean = -0.0072;
    double fallSd = 0.0022;
    double changeJump = 0.006;  // a change of segment may come with a step of the level
    // From row to column in a week: rising, flat, falling.
    std::array<std::array<double, 3>, 3> change{{{0.952, 0.041, 0.007}, {0.081, 0.910, 0.009}, {0.220, 0.045, 0.735}}};
    std::array<double, 3> start{0.75, 0.20, 0.05};
    int youngWeeks = 4;       // younger segments seldom end
    double youngShare = 0.3;  // of the usual chance
    // A session may be off as a whole: a wrong entry, an illness.
    double offShare = 0.013;
    double offMean = 0;
    double offSd = 0.5;
    // It is asked for only when a set lies further from what was expected than this (squared, in variances). 0: always.
    double offFrom = 0;
    // A longer break: no growth over it, some loss, and less certainty.
    double gapWeeks = 2.3;
    double gapLossAfterWeeks = 2;
    double gapLossAWeek = 0.005;
    double gapSd = 0.04;
    friend bool operator==(const RegimeParameters&, const RegimeParameters&) = default;
};

}  // namespace steelyard
