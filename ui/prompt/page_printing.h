// Laid-out pages onto a printer: those of the PDF and the preview, on the paper that the printer has.
//
//   const auto pages = [sheet](PaperSize paper) { return layOutReview(sheet, paper).pages; };
//   prompter.previewPrint(this, {title, pageSize(PaperSize::A4), [=](QPrinter& p) { return printPages(p, pages); }});
#pragma once

#include "ui/print/sheet_layout.h"

#include <QtGui/QPageSize>

#include <functional>

class QPrinter;

namespace steelyard {

[[nodiscard]] QPageSize pageSize(PaperSize paper);
// What this part of the world has in its printers: Letter where inches are used, else A4.
[[nodiscard]] PaperSize usualPaper();
// Letter when the printer holds Letter, else A4; the printer scales nothing. False when the printer gave up.
[[nodiscard]] bool printPages(QPrinter& printer, const std::function<std::vector<SheetPage>(PaperSize)>& pages);

}  // namespace steelyard
