// A lift line as a fit of the readings' numbers hears it: what each session said, and nothing else. And how likely that is
// by given numbers.
//
//   const FitLine line = fitLineOf(record, log, thresholds, {asOf.addDays(-363), asOf});
//   const auto ln = logLikelihoodOf(lines, parameters, 2, progress);     // by line; absent: asked to stop
//
// Heard exactly as readings hear it (line_tracker.h: slips of the pen left out), less the weeks whose technique or effort
// makes the record incomparable: such weeks would raise the fitted noise of weeks by more than a half.
//
// The likelihood takes every lifter as usually noisy (a noise scale of 1). Where nobody wrote down the experience it is the
// mixture over all. It doesn't depend on the number of threads. Units: those of regime_filter.h; days are Julian.
#pragma once

#include "core/analysis/line_tracker.h"
#include "core/base/progress.h"

namespace steelyard {

struct FitSession {
    double day = 0;
    qint64 week = 0;  // weekOf() the day
    std::vector<RegimeObservation> sets;
    friend bool operator==(const FitSession&, const FitSession&) = default;
};

struct FitLine {
    std::optional<Experience> experience;
    std::vector<FitSession> sessions;  // oldest first, each with something heard
    friend bool operator==(const FitLine&, const FitLine&) = default;

    [[nodiscard]] int weeksHeard() const;
    [[nodiscard]] int setsHeard() const;
};

struct FitSpan {
    QDate first;
    QDate last;
};

[[nodiscard]] FitLine fitLineOf(const LineRecord&, const AthleteLog&, const VerdictThresholds&, FitSpan);

// ln of the likelihood, by line. `progress` is only asked whether to stop.
[[nodiscard]] std::optional<std::vector<double>> logLikelihoodOf(std::span<const FitLine>, const ReadingParameters&,
                                                                 int threads, const Progress& progress);

}  // namespace steelyard
