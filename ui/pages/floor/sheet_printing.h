// Sheets onto a printer: the pages of the PDF and the preview, on the paper that the printer has.
//
//   prompter.previewPrint(this, {title, pageSize(PaperSize::A4), [=](QPrinter& p) { return printSheets(p, sheets); }});
#pragma once

#include "ui/print/sheet_layout.h"

#include <QtGui/QPageSize>

class QPrinter;

namespace steelyard {

[[nodiscard]] QPageSize pageSize(PaperSize paper);
// Letter when the printer holds Letter, else A4; the printer scales nothing. False when the printer gave up.
[[nodiscard]] bool printSheets(QPrinter& printer, const std::vector<SessionSheet>& sheets);

}  // namespace steelyard
