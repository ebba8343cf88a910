// A square code (QR, ISO/IEC 18004) that a scanner types as if it were a keyboard.
//
//   const auto code = makeScanCode(QStringLiteral("04HTQK-1DBM4"));
//   code->isDark(0, 0)                                    // a corner is always dark
//
// The smallest square for the text, with a quarter of it free to be smeared or copied badly (level Q). Digits, capitals and
// hyphens make the smallest squares; what the program prints has nothing else. Nothing when the text is empty or too long.
#pragma once

#include <QtCore/QString>

#include <optional>
#include <vector>

namespace steelyard {

struct ScanCode {
    int size = 0;            // squares along a side, without the quiet zone
    std::vector<bool> dark;  // row by row

    [[nodiscard]] bool isDark(int row, int column) const
    {
        return dark[static_cast<std::size_t>(row) * static_cast<std::size_t>(size) + static_cast<std::size_t>(column)];
    }
    friend bool operator==(const ScanCode&, const ScanCode&) = default;
};

inline constexpr double kScanModule = 0.5;  // mm: three dots of a printer or a scanner at 150 dpi
inline constexpr int kScanQuietModules = 4;

[[nodiscard]] std::optional<ScanCode> makeScanCode(const QString& text);

}  // namespace steelyard
