// The gym's day at a glance: turn by turn who does what, and which bars, discs and dumbbells that takes at the same time.
//
//   const auto pages = layOutDay(sheets, gyms, PaperSize::A4);            // sheets of one day
//
// One page or more for each group in each gym. What the gym hasn't enough of stands framed and in bold under its turn. The page says
// which assumption it rests on (gym_day.h).
#pragma once

#include "core/sheets/gym_day.h"
#include "ui/print/sheet_layout.h"

namespace steelyard {

[[nodiscard]] std::vector<SheetPage> layOutDay(std::span<const SessionSheet> sheets, std::span<const Row<Gym>> gyms,
                                               PaperSize paper);

}  // namespace steelyard
