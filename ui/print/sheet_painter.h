// Paints a laid-out page: the same on the screen, on a printer and into a PDF.
//
//   paintSheetPage(painter, layout.pages[0], writer.resolution() / 25.4);
//
// The painter's origin is the paper's top left corner.
#pragma once

#include "ui/print/sheet_layout.h"

class QPainter;

namespace steelyard {

void paintSheetPage(QPainter& painter, const SheetPage& page, double deviceUnitsPerMm);

}  // namespace steelyard
