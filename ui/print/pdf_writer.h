// Sheets, or any pages that were laid out, as one PDF file: all of it or nothing.
//
//   STEELYARD_CHECK(writeSheetsPdf(sheets, PaperSize::A4, path));
//
// The document is made in memory first and written through a file that replaces the old one only when every byte is on
// the disk: a PDF written straight to a full disk comes out cut without any error.
// Type is embedded and text can be selected.
// Failures: Invalid (no sheets, no pages), Storage (the file can't be written; what was there stays).
#pragma once

#include "core/base/result.h"
#include "ui/print/sheet_layout.h"

#include <span>

class QIODevice;

namespace steelyard {

[[nodiscard]] Result<void> writeSheetsPdf(std::span<const SessionSheet> sheets, PaperSize paper, const QString& path);
[[nodiscard]] Result<void> writePagesPdf(std::span<const SheetPage> pages, PaperSize paper, const QString& title,
                                         const QString& path);
// The document itself.
[[nodiscard]] Result<QByteArray> sheetsPdf(std::span<const SessionSheet> sheets, PaperSize paper);

}  // namespace steelyard
