// Edits of a session that is being keyed from its sheet.
//
//   history.perform(keySet(lift, sheetDay, set, tr("key set 5 of Ada Fulcrum")));     // set.number == 5, as on the sheet
//   history.perform(named(changeSet(id, set, clock), tr("change set 5 of Ada Fulcrum")));
//
// A keyed set keeps the number that the sheet gave it, unless its line has that number on that day already: then it takes the
// next free one of the session. It stands in the session where its number belongs, whatever the order of keying.
#pragma once

#include "core/domain/logbook.h"
#include "core/edits/edit.h"

namespace steelyard {

[[nodiscard]] std::unique_ptr<Edit> keySet(LiftLine line, QDate date, const SetEntry& set, QString label);
// The same edit under a name that says what it is about.
[[nodiscard]] std::unique_ptr<Edit> named(std::unique_ptr<Edit> edit, QString label);

}  // namespace steelyard
