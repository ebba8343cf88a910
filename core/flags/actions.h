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

}  // namespace steelyard
