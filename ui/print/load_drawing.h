// A picture of how a load is hung: one side of the bar with its discs from the inside out, or discs on a belt.
//
//   drawLoad(page, {x, y, 34, 11.5}, load);
//
// A disc is white with its number, and has its competition colour as a band at both ends (disc_colours.h), so that a photocopy
// and an eye that sees no colours lose nothing. Heights rise with the mass but are not to scale: a small disc must hold its number as
// well. Where so many discs hang that they are squeezed, the numbers are left to the words beside the picture.
#pragma once

#include "ui/print/sheet_layout.h"

namespace steelyard {

// More than these are squeezed and lose their numbers.
inline constexpr std::size_t kMostNumberedDiscs = 5;

// Of the drawing's height.
[[nodiscard]] double discHeight(Mass disc);

// False when there is nothing to draw.
[[nodiscard]] bool hasDrawing(const SheetLoad& load);
void drawLoad(SheetPage& page, const QRectF& area, const SheetLoad& load);

}  // namespace steelyard
