// What a coach can do about a flag: machine words, as they stand in flags, decisions and JSON, with a label for people.
//
//   actionLabel(u"hold_load")   // "Keep the load"
//
// Words are part of the formats: add to them, never change them.
#pragma once

#include <QtCore/QString>
#include <QtCore/QStringList>

namespace steelyard {

[[nodiscard]] QStringList actionWords();
// An unknown word (a newer program's) is its own label.
[[nodiscard]] QString actionLabel(QStringView word);
// What it asks of lifter and coach at the next session, where the plan doesn't carry it; empty for what is done away from
// the gym floor, and for refer_out, which has the caution below.
[[nodiscard]] QString actionNote(QStringView word);
// What goes with sending somebody to a professional, always.
[[nodiscard]] QString referralCaution();

}  // namespace steelyard
