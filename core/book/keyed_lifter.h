// What keying a lifter's day needs, read at once: the record, the library, the gym, the sheet, and what the book has of the day.
//
//   STEELYARD_TRY(auto lifter, readKeyedLifter(book.database(), athlete, date));
//   lifter.sheet                       // absent: nothing is planned and nothing was ever done
//
// The record goes up to the day. Failures: NotFound, Storage.
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/domain/session_record.h"
#include "core/sheets/session_sheet.h"
#include "core/storage/database.h"

namespace steelyard {

struct KeyedLifter {
    Library library;
    AthleteLog log;
    SheetEquipment equipment;
    std::optional<SessionSheet> sheet;
    SessionRecord record;
    RuleSettings settings;  // the coach's numbers, for a lift that is added
};

[[nodiscard]] Result<KeyedLifter> readKeyedLifter(Database&, Id<Athlete>, QDate);

}  // namespace steelyard
