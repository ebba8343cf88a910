// A small group on few pages: two to four lifters to a page, in columns, each with a code of their own.
//
//   const auto pages = layOutGroup(sheets, PaperSize::A4);      // of one day and group
//
// A lifter begins a column, or follows another where the whole session still fits below. Exercises and sets come in keying order; none
// is split. Discs are drawn and cues are there while that takes no further page. What was felt after an exercise has one box, with the
// joint and its 0-10. The page is the coach's, because it shows the cautions of everybody on it.
#pragma once

#include "ui/print/sheet_layout.h"

namespace steelyard {

inline constexpr int kMostOnAPage = 4;

[[nodiscard]] std::vector<SheetPage> layOutGroup(std::span<const SessionSheet> sheets, PaperSize paper);

}  // namespace steelyard
