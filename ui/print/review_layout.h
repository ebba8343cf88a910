// The review on paper: where everything stands, in millimetres. Painted like a sheet (sheet_painter.h, pdf_writer.h).
//
//   const SheetLayout layout = layOutReview(buildReviewSheet(shown, asOf), PaperSize::A4);   // after loadBundledFonts()
//
// Invariants: a lifter's heading stands on the page of their first flag; what goes over to a further page stands there under
// their name; nothing lies outside the margins of sheet_layout.h; black on white alone. Every page has the day, its number and
// what to keep in mind with other people's health.
#pragma once

#include "core/flags/review_sheet.h"
#include "ui/print/sheet_layout.h"

namespace steelyard {

[[nodiscard]] SheetLayout layOutReview(const ReviewSheet& sheet, PaperSize paper);

}  // namespace steelyard
