// Free text in a CSV file, guarded so that a spreadsheet never takes it for a formula.
//
// A text that begins with = + - @ a tab or a carriage return, or with an apostrophe, is written with an apostrophe in front;
// reading takes that one away again, so every text survives the round trip. Numbers are not guarded.
#pragma once

#include <QtCore/QString>

namespace steelyard {

[[nodiscard]] QString guardText(const QString& text);
[[nodiscard]] QString unguardText(const QString& text);

}  // namespace steelyard
