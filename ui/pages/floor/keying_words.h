// The words of keying: what is odd about an entry, what a change of the lift cuts off, and what the keys do.
//
//   questionWords(question, unit)        "About 43 kg is usual here. 95 lb would fit: kilograms and pounds mixed up?"
//   answerWords(question, set)           "Enter: keep 95 kg × 10 · Tab: take 95 lb × 10 · Escape: drop it"
//   changeWords(change, from, to)        "This opens a new lift line. …"
//
// Numbers, dates and units by locale. No failures.
#pragma once

#include "core/keying/entry_check.h"
#include "ui/format/lift_words.h"

#include <QtCore/QString>

namespace steelyard {

[[nodiscard]] QString questionWords(const EntryQuestion&, MassUnit);
[[nodiscard]] QString answerWords(const EntryQuestion&, const SetEntry&);
[[nodiscard]] QString changeWords(const LineChange&, const QString& from, const QString& to);

}  // namespace steelyard
