// A lifter's trials as the book knows them on a day: what screens and the console read.
//
//   STEELYARD_TRY(const LifterTrials trials, readTrials(book->database(), athlete, today));
//   const TrialAnalysis analysis = trials.analyse(trials.log.trials.back().value, wording);
//   history.perform(designTrial(trial, blockChanges(laid)));
//
// One consistent snapshot of the record. The analysis follows the lifter's readings with the numbers the book has learned; it takes
// some 20 ms a trial. Failures: NotFound, Storage.
#pragma once

#include "core/analysis/reading_parameters.h"
#include "core/analysis/verdict_thresholds.h"
#include "core/edits/edits.h"
#include "core/planning/trial_in_block.h"
#include "core/storage/database.h"
#include "core/trials/trial_analysis.h"

namespace steelyard {

struct LifterTrials {
    Library library;
    AthleteLog log;
    ReadingParameters parameters;
    VerdictThresholds thresholds;
    QDate asOf;

    [[nodiscard]] TrialAnalysis analyse(const Trial&, const Wording& wording = {}) const;
};

[[nodiscard]] Result<LifterTrials> readTrials(Database&, Id<Athlete>, QDate asOf);
// What an edit stores of what was laid into the plan.
[[nodiscard]] std::vector<BlockChange> blockChanges(const LaidTrial&);

}  // namespace steelyard
