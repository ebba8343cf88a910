// The type that comes with the program, so that a sheet looks the same on every machine.
//
//   if (!loadBundledFonts()) ...   // once, after QGuiApplication
//   QFont font(sheetFontFamily(), 11);
//
// DejaVu Sans, regular and bold: wide coverage, tabular figures by design. Its licence stands beside the files.
#pragma once

#include <QtCore/QString>

namespace steelyard {

// True when every bundled file was taken. Calling it again is harmless.
[[nodiscard]] bool loadBundledFonts();
[[nodiscard]] QString sheetFontFamily();

}  // namespace steelyard
