// The few numbers that stand beside a verdict: what is likely, rate, since when, capacity, what to expect next. A number
// that the record can't carry keeps its place and says so.
//
//   for (const LineNumber& number : lineNumbers(reading, MassUnit::kg)) ...   // always the same five, in this order
#pragma once

#include "core/analysis/line_reading.h"

#include <array>

namespace steelyard {

struct LineNumber {
    QString title;   // "Change a week"
    QString value;   // "+0.30 %"
    QString detail;  // "90 %: +0.10 to +0.50 %"
    QString note;    // "straight line: +0.25 %"
    friend bool operator==(const LineNumber&, const LineNumber&) = default;
};

inline constexpr std::size_t kLineNumbers = 5;
[[nodiscard]] std::array<LineNumber, kLineNumbers> lineNumbers(const LineReading& reading, MassUnit unit);

// "about 8 in 10", "under 1 in 10".
[[nodiscard]] QString chanceWords(double chance);

}  // namespace steelyard
