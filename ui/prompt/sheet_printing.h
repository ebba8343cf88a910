// Sheets through the system's print preview, which prints from there. It opens without an event loop of its own.
//
//   if (const auto shown = showPrintPreview(this, sheets, PaperSize::A4); !shown) line->setText(shown.error().what);
//
// Failures: Unsupported when this machine has no printer; a PDF is the way then.
#pragma once

#include "core/base/result.h"
#include "ui/print/sheet_layout.h"

#include <functional>

class QPrinter;
class QWidget;

namespace steelyard {

[[nodiscard]] Result<void> showPrintPreview(QWidget* parent, std::vector<SessionSheet> sheets, PaperSize paper);
// Every page of the sheets on the printer's paper. False when the printer gave up.
[[nodiscard]] bool printSheets(QPrinter& printer, const std::vector<SessionSheet>& sheets, PaperSize paper);

}  // namespace steelyard
