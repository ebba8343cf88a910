// Reads one day of one lifter, and who has sets on a day: what keying looks at after every row, where the whole record would be
// a waste.
//
//   STEELYARD_TRY(const SessionRecord record, readSession(book.database(), athlete, date));
//   STEELYARD_TRY(const auto counts, countSetsOn(book.database(), date));   // counts[athlete] == 18
//
// A day without a session is empty. Failure: Storage.
#pragma once

#include "core/domain/session_record.h"
#include "core/storage/database.h"

#include <map>

namespace steelyard {

[[nodiscard]] Result<SessionRecord> readSession(Database&, Id<Athlete>, QDate);
// Sets of each lifter who has any on that day.
[[nodiscard]] Result<std::map<Id<Athlete>, int>> countSetsOn(Database&, QDate);

}  // namespace steelyard
