// The papers that the floor can print, by name, from one list of sheets.
//
//   const auto layout = paperLayoutFrom(u"group");
//   const auto pages = layOutPapers(*layout, {sheets, gyms}, PaperSize::A4);
//
// Page: one lifter a page. Group: several to a page, by day and group. Week: a lifter's days at a glance. Day: a gym's turns and what
// they need at once.
#pragma once

#include "ui/print/sheet_layout.h"

namespace steelyard {

enum class PaperLayout { Page, Group, Week, Day };

[[nodiscard]] std::optional<PaperLayout> paperLayoutFrom(QStringView name);  // "page", "group", "week", "day"
[[nodiscard]] QString paperLayoutTitle(PaperLayout layout);

struct PaperContent {
    std::span<const SessionSheet> sheets;  // in any order
    std::span<const Row<Gym>> gyms;
};
[[nodiscard]] std::vector<SheetPage> layOutPapers(PaperLayout layout, const PaperContent& content, PaperSize paper);

}  // namespace steelyard
