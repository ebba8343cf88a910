// Bringing back what a set said before: an edit of its own, which can be undone and keeps the value that it replaces.
//
//   const auto histories = logbook.replacedSets(athlete, date);
//   history.perform(bringBack(histories[0], 0, athlete, date, clock));
//
// A changed set gets that value again and keeps its number. A removed set comes back to its line and day, with its number where
// that is free, else after the last; as it was when it was removed, or as an earlier value says. Failures: NotFound, Conflict.
#pragma once

#include "core/base/clock.h"
#include "core/edits/edit.h"
#include "core/storage/logbook_repository.h"

namespace steelyard {

// `value` is an index of history.was.
[[nodiscard]] std::unique_ptr<Edit> bringBack(const SetHistory& history, std::size_t value, Id<Athlete> owner,
                                              QDate date, const Clock& clock);

}  // namespace steelyard
