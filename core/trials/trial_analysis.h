// Everything about one trial in one call, for screens and the console.
//
//   const TrialAnalysis analysis = analyseTrial(trial, log, library, parameters, thresholds, today);
//   analysis.verdict.forCoach
//
// Takes about 20 ms, most of it for following the lifter's record. Pure; no failures.
#pragma once

#include "core/trials/trial_standing.h"
#include "core/trials/trial_verdict.h"

namespace steelyard {

struct TrialAnalysis {
    TrialRecord record;
    TrialStanding standing;
    TrialVerdict verdict;           // holds the effects: hide it while the coach doesn't want to look
    std::vector<QString> armNames;  // by place
};

[[nodiscard]] TrialAnalysis analyseTrial(const Trial&, const AthleteLog&, const Library&, const ReadingParameters&,
                                         const VerdictThresholds&, QDate today, const Wording& = {});

}  // namespace steelyard
