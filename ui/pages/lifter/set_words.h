// A logged session in words, and what a person typed into a cell of a set.
//
//   parseLoadCell(u"42,5", kg)     42.5 kg; "95 lb" keeps its unit
#pragma once

#include "core/analysis/athlete_log.h"
#include "ui/format/set_words.h"

#include <optional>

namespace steelyard {

// The whole session on one line, a set a row, for the quiet note beside the chart.
[[nodiscard]] QString sessionWords(const Exposure& exposure);

[[nodiscard]] std::optional<Load> parseLoadCell(QString text, MassUnit unit);
// "2", "1.5", "RPE 8"; a blank cell is handled by the caller.
[[nodiscard]] std::optional<Effort> parseEffortCell(QString text);
[[nodiscard]] std::optional<Decimal> parseDecimalCell(const QString& text);  // "12,5"

}  // namespace steelyard
