// How the program looks: a light and a dark palette, both designed, one accent, and the colours of data.
//
//   applyTheme(app, ThemeChoice::System);
//   const ThemeColours& colours = themeColours(palette());     // in any paintEvent
//
// Data colours are Okabe and Ito's (Color Universal Design, 2008); on the dark ground the dark blue gives way to the sky
// blue and the shades are lightened until they keep a contrast of 3:1 (graphics) and 4.5:1 (text), WCAG 2.2. Colour only
// repeats what a word or a shape says.
#pragma once

#include <QtGui/QColor>
#include <QtGui/QPalette>

#include <array>

class QApplication;

namespace steelyard {

enum class ThemeChoice { System, Light, Dark };

struct ThemeColours {
    bool dark = false;
    QColor ground;  // page
    QColor text;
    QColor quiet;                // secondary text, still 4.5:1
    QColor hairline;             // rules between things
    QColor accent;               // selection, focus, links
    QColor warm;                 // worth a look (text grade)
    QColor alarm;                // soon (text grade)
    QColor good;                 // as hoped (text grade)
    std::array<QColor, 8> data;  // Okabe and Ito: blue first
};

[[nodiscard]] QPalette themePalette(bool dark);
[[nodiscard]] const ThemeColours& themeColours(bool dark);
[[nodiscard]] const ThemeColours& themeColours(const QPalette& palette);
[[nodiscard]] bool isDark(const QPalette& palette);
void applyTheme(QApplication& app, ThemeChoice choice);

}  // namespace steelyard
