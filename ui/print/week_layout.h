// A lifter's week at a glance: the days with their exercises and targets, to pin up or to take home. Nothing is written on it.
//
//   const auto pages = layOutWeek(sheetsOfOneLifter, PaperSize::A4);      // by day
//
// Days keep together where a column can hold them.
#pragma once

#include "ui/print/sheet_layout.h"

namespace steelyard {

// The Monday on or before a day: where a week on paper begins.
[[nodiscard]] QDate weekBegin(QDate day);
[[nodiscard]] std::vector<SheetPage> layOutWeek(std::span<const SessionSheet> sheets, PaperSize paper);

}  // namespace steelyard
