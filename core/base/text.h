// Rules for names and notes that people type or import.
#pragma once

#include <QtCore/QString>

namespace steelyard {

// Longest name and note that are kept; longer input is refused, not cut.
inline constexpr qsizetype kMaxNameLength = 120;
inline constexpr qsizetype kMaxNoteLength = 4000;

// A name as it is stored: Unicode NFC, no control, zero-width or direction-changing characters, inner white space
// folded to single spaces, none at the ends.
[[nodiscard]] QString cleanName(QStringView text);
// A note as it is stored: NFC, line breaks kept, other control characters dropped, trimmed at the end.
[[nodiscard]] QString cleanNote(QStringView text);
// For search: case and diacritics folded away ("Żaneta" finds "zaneta").
[[nodiscard]] QString searchKey(QStringView text);
// For line keys: lower-case letters and digits joined by single dashes ("Straight bar, flat" -> "straight-bar-flat").
[[nodiscard]] QString slug(QStringView text);

}  // namespace steelyard
