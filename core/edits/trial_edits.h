// Edits of trials, each one step of the history together with what it changes in the plan.
//
//   const LaidTrial laid = layTrial(...);                                  // core/planning/trial_in_block.h
//   history.perform(designTrial(trial, blockChanges));
//   history.perform(lookAtTrial(row, {.date = today, .sessionsDone = 5}));
//
// An edit is given the trial as it will be and the blocks as they will be. The design (question, arms, outcomes, limit, seed, the order
// of the arms) stands from the first day: a change that would touch it fails with Invalid. What happened otherwise is written to the
// days. A trial that has ended takes no looks. Failures: Invalid, NotFound (the trial is not in the book any more).
#pragma once

#include "core/domain/trial.h"
#include "core/edits/edits.h"

namespace steelyard {

[[nodiscard]] std::unique_ptr<Edit> designTrial(const Trial& trial, std::vector<BlockChange> blocks);
// Sessions done otherwise, missed, moved, noted.
[[nodiscard]] std::unique_ptr<Edit> changeTrialDays(const Row<Trial>& before, const Trial& after,
                                                    std::vector<BlockChange> blocks);
// Somebody looks at the results before the end.
[[nodiscard]] std::unique_ptr<Edit> lookAtTrial(const Row<Trial>& before, TrialLook look);
// `blocks`: with the choice carried into the weeks that remain, or the sessions that were planned taken back.
[[nodiscard]] std::unique_ptr<Edit> endTrial(const Row<Trial>& before, const TrialEnding& ending,
                                             std::vector<BlockChange> blocks);
// Goes on after all: takes an ending back that is no longer the newest step.
[[nodiscard]] std::unique_ptr<Edit> reopenTrial(const Row<Trial>& before);
[[nodiscard]] std::unique_ptr<Edit> removeTrial(const Row<Trial>& trial, std::vector<BlockChange> blocks);
// The arm that was chosen becomes the lift of the weeks that remain, some time after the end.
[[nodiscard]] std::unique_ptr<Edit> carryTrialChoice(const Row<Trial>& trial, std::vector<BlockChange> blocks);

}  // namespace steelyard
