// A set and its repetitions one by one are changed together: what the repetitions say of the set (withRepetitions) goes into the
// set in the same step of the history.
//
//   history.perform(recordRepetitions({{setId, repetitions}}, clock));          // of sets in the book; empty: takes them away
//   history.perform(addCountedSet(line, today, set, repetitions, label));       // counted at the rack: watched, set and all
//
// The value that the set had is kept when it changes. Failures: NotFound, Invalid, Storage.
#pragma once

#include "core/base/clock.h"
#include "core/domain/repetition.h"
#include "core/edits/edit.h"

namespace steelyard {

[[nodiscard]] std::unique_ptr<Edit> recordRepetitions(std::vector<SetRepetitions> sets, const Clock& clock);
[[nodiscard]] std::unique_ptr<Edit> addCountedSet(LiftLine line, QDate date, const SetEntry& set,
                                                  std::vector<Repetition> repetitions, QString label);

}  // namespace steelyard
