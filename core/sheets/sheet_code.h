// The number of a sheet: short enough to be typed, found again from the book alone, and without a name or a word about health.
// It stands on the paper for people and in the square code for a scanner.
//
//   sheetIdFor(athlete.uuid, QDate(2027, 3, 8))                 "04HTQK-1DBM4"
//   STEELYARD_TRY(const SheetCode code, readSheetId(u"04htqk 1dbm4"));
//   STEELYARD_TRY(const Id<Athlete> athlete, athleteOfSheet(code, rows));   code.date is the sheet's day
//
// Six characters of the lifter (the first thirty bits of the record's random id), four of the day, one that shows a slip of the
// keys. The alphabet leaves out I, L, O and U; where somebody types I or L a one is read, and a zero for O. The check character is that
// of ISO 7064, MOD 37,36: it notices every single wrong character and almost every exchange of two neighbours.
//
// Days from 1 January 1900 to the year 4770. Two lifters of a book of 200 share the six characters once in 50,000 books; then
// neither is guessed.
// Failures: Invalid (no number of a sheet, a slip), NotFound (nobody in this book), Conflict (two lifters).
#pragma once

#include "core/base/result.h"
#include "core/domain/athlete.h"
#include "core/base/id.h"

#include <span>

namespace steelyard {

struct SheetCode {
    QString athlete;  // its six characters
    QDate date;
    friend bool operator==(const SheetCode&, const SheetCode&) = default;
};

[[nodiscard]] QString sheetIdFor(const QUuid& athlete, QDate date);
// Case, spaces and hyphens don't matter.
[[nodiscard]] Result<SheetCode> readSheetId(QStringView typed);
[[nodiscard]] Result<Id<Athlete>> athleteOfSheet(const SheetCode&, std::span<const Row<Athlete>>);

// ISO 7064, MOD 37,36, over digits and capital letters.
[[nodiscard]] QChar checkCharacter(QStringView text);

}  // namespace steelyard
