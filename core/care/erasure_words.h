// What an erasure takes away, in the coach's words: {"Sets: 412", "Sessions: 96", …}, the record first.
#pragma once

#include "core/storage/athlete_removal.h"

#include <QtCore/QStringList>

namespace steelyard {

// Tables that a later version brings are named as they are in the file; parts of something named already are not counted apart.
[[nodiscard]] QStringList erasureLines(const std::vector<RowCount>& counts);
// Where a name still stands: "gym: Gym of Dana Quill".
[[nodiscard]] QString mentionLine(const NameMention& mention);

}  // namespace steelyard
