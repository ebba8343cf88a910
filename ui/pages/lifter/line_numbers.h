// The few numbers that stand beside a verdict: rate, capacity, what to expect next. A number that the record can't carry
// keeps its place and says so.
//
//   for (const LineNumber& number : lineNumbers(reading, MassUnit::kg)) ...   // always the same three, in this order
#pragma once

#include "core/analysis/line_reading.h"

#include <array>

namespace steelyard {

struct LineNumber {
    QString title;   // "Rate a week"
    QString value;   // "+0.3 %"
    QString detail;  // "90 %: +0.1 % to +0.5 %"
    friend bool operator==(const LineNumber&, const LineNumber&) = default;
};

[[nodiscard]] std::array<LineNumber, 3> lineNumbers(const LineReading& reading, MassUnit unit);

}  // namespace steelyard
