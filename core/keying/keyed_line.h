// What is typed into a row of the sheet, read beside what is planned there.
//
//   readKeyedLine(u"10", exercise, row, sheet)       the load of before x 10
//   readKeyedLine(u"w", exercise, row, sheet)        as planned, watched, all to the standard
//   readKeyedLine(u"-2s @9", exercise, row, sheet)   as planned, two off by swing, effort 9
//   keyedAsPlanned(row, Watched::Fine)               what one key stores
//
// The notation is set_notation.h. A line that begins with a word or sign instead of a number speaks of the planned load and
// repetitions; where nothing is planned, of the set that stands there. Repetitions alone keep the load of the set that stands in
// the row, else of the one before it today, else the planned one. The set has the row's number. Failures: as the notation's.
#pragma once

#include "core/keying/keying_sheet.h"
#include "core/keying/set_notation.h"

namespace steelyard {

enum class Watched { No, Fine };  // nobody watched; somebody did, and all was to the standard

[[nodiscard]] NotationReading readKeyedLine(QStringView line, const KeyingExercise&, std::size_t row,
                                            const KeyingSheet&);
// Absent where nothing is planned that could be taken over.
[[nodiscard]] std::optional<SetEntry> keyedAsPlanned(const KeyingRow&, Watched);
// What was typed is said to have been watched: unless the line itself says what was off.
[[nodiscard]] SetEntry withWatching(SetEntry, Watched);

}  // namespace steelyard
