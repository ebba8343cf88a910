// Fits the numbers that readings rest on to a roster's own record.
//
//   STEELYARD_TRY(const ParameterFit fit, fitParameters(lines, start, {}, progress));
//   if (fit.fitted) ...     // else fit.kept says why the start stays: too_few_lines, no_gain
//
// Maximises the pooled log likelihood (fit_line.h) less a ridge that holds every number near the shipped one: a normal prior
// of its logarithm (of its odds, for shares) with SD 0.5, and never further than 2.5 from it. One number is moved at a time,
// in a fixed order, with a parabola through the last three places where it lies between them. What it finds is a place from
// which no step pays, which need not be the best of all. Lifters' own noise is not fitted: single variances from some dozen
// weeks are mostly chance, and readings weigh noise scales anyway.
//
// What is found is what the filter needs, which is not always what a lifter has: it takes each set for heavy-tailed, the
// day's part of its error included, so that days that vary normally come out noisier (by about a quarter where days vary
// most) than they are. The shipped numbers are fitted in the same way, so the two compare.
//
// The penalised likelihood never falls; from the shipped numbers the likelihood itself doesn't either. The same for the same
// lines and start, whatever the number of threads. Failure: Cancelled, within a line's likelihood (about a millisecond).
#pragma once

#include "core/analysis/fit_line.h"
#include "core/base/result.h"

namespace steelyard {

// Our convention: fewer say more of chance than of a roster.
inline constexpr int kLeastFitLines = 20;
inline constexpr int kLeastFitWeeks = 12;
// What a number that means nothing gains on average is a half; a fit has to be worth more than a handful of them.
inline constexpr double kLeastFitGain = 2;

struct FitOptions {
    int threads = 2;
    int mostEvaluations = 400;
};

struct ParameterFit {
    std::optional<ReadingParameters> fitted;  // its version is the start's
    const char16_t* kept = u"";               // why the start stays, when it does
    double logLikelihoodBefore = 0;
    double logLikelihoodAfter = 0;
    double penalisedBefore = 0;
    double penalisedAfter = 0;
    int lines = 0;  // that are long enough
    int sets = 0;
    int evaluations = 0;
};

[[nodiscard]] bool isLongEnough(const FitLine&);
[[nodiscard]] Result<ParameterFit> fitParameters(std::span<const FitLine>, const ReadingParameters& start,
                                                 const FitOptions&, const Progress&);

}  // namespace steelyard
