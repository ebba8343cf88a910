#include "core/trials/trial_analysis.h"

#include "core/trials/arm_differences.h"

namespace steelyard {

TrialAnalysis analyseTrial(const Trial& trial, const AthleteLog& log, const Library& library,
                           const ReadingParameters& parameters, const VerdictThresholds& thresholds, QDate today,
                           const Wording& wording)
{
    TrialAnalysis analysis;
    analysis.armNames = armNames(trial, library);
    analysis.record = trialRecord(trial, log, trialSurprises(trial, log, parameters, thresholds, today), today);
    analysis.standing = trialStanding(trial, analysis.record, today);
    analysis.verdict = trialVerdict(trial, analysis.record, analysis.armNames, wording);
    return analysis;
}

}  // namespace steelyard
