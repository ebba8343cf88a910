// Widths of text in millimetres, the same on every device: measured at a fixed fine resolution without hinting.
//
//   const QStringList lines = wrapText(text, 90, 10, false);
//
// Pure functions of the bundled font; loadBundledFonts() comes first.
#pragma once

#include <QtCore/QStringList>
#include <QtGui/QFont>

namespace steelyard {

// Type is set in pixels of this many to the inch, and painted through a scale.
inline constexpr double kTypeUnitsPerInch = 1200;
inline constexpr double kTypeUnitsPerMm = kTypeUnitsPerInch / 25.4;

[[nodiscard]] QFont sheetFont(double points, bool bold);
// After loadBundledFonts(): widths are remembered.
[[nodiscard]] double textWidthMm(const QString& text, double points, bool bold);
[[nodiscard]] double lineHeightMm(double points);
// Broken at spaces, and inside a word only where it is wider than a line. `most` lines; the last one is shortened.
[[nodiscard]] QStringList wrapText(const QString& text, double widthMm, double points, bool bold, int most = 100);
[[nodiscard]] QString shortenText(const QString& text, double widthMm, double points, bool bold);

}  // namespace steelyard
