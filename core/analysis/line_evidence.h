// What a verdict is decided on: the counted exposures of one line up to a day, and the plain facts about them.
//
//   const LineEvidence evidence = gatherEvidence(record, log, asOf, thresholds);
//   if (evidence.tooFew) ...
//
// Pure; no failures.
#pragma once

#include "core/analysis/trend_fit.h"
#include "core/analysis/verdict_thresholds.h"

namespace steelyard {

struct LineEvidence {
    std::vector<CountedExposure> counted;  // all up to the day
    std::size_t working = 0;               // exposures with working sets
    std::size_t workingLately = 0;         // in the last weeks
    double weeksOfRecord = 0;              // from the first working exposure to the day
    bool tooFew = false;
    bool mixed = false;
    double offShareLately = 0;  // mean over the watched ones of the last exposures
    bool effortUnknown = false;
    double effortlessShare = 0;  // of the working sets of the last exposures
    bool afterLayoff = false;
    qint64 layoffDays = 0;    // of the last break
    bool deload = false;      // now: the last session or the planned week
    double countedShare = 0;  // recent exposures
    double watchedShare = 0;
    std::vector<DatedEstimate> usable;  // since the last break, to the standard; with assumed reserve if effortUnknown
    std::vector<DatedEstimate> window;  // the last of them, that a trend is fitted to
};

[[nodiscard]] LineEvidence gatherEvidence(const LineRecord&, const AthleteLog&, QDate asOf, const VerdictThresholds&);

}  // namespace steelyard
