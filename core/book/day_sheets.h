// Reads the book and makes the sheets of some days, by day, then group, then name.
//
//   STEELYARD_TRY(const auto sheets, readDaySheets(book.database(), {date, 7, std::nullopt}, {}));
//
// For the days from `from` on: everybody expected (sheets/sheets_for_day.h). A named athlete who isn't expected on any of
// them still gets the first day's sheet, because somebody asked. The database is only read, and from the calling thread.
// Failures: NotFound (no athlete of that name), Invalid (no days), Cancelled, Storage.
#pragma once

#include "core/base/progress.h"
#include "core/sheets/session_sheet.h"
#include "core/storage/database.h"

namespace steelyard {

struct DaySheetsRequest {
    QDate from;
    int days = 1;
    std::optional<QString> athlete;  // by name; absent: everybody who isn't archived
    bool alsoUnexpected = false;     // also those who aren't expected but could be given a sheet
};

struct DaySheet {
    Id<Athlete> athlete;
    bool expected = false;
    SessionSheet sheet;
};

inline constexpr int kMostSheetDays = 31;

[[nodiscard]] Result<std::vector<DaySheet>> readDaySheets(Database&, const DaySheetsRequest&, const Progress&);

}  // namespace steelyard
