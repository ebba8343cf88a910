// A picture of how a load is set up: one side of the bar with its plates, a pin in a stack, a dumbbell, plates on a belt.
//
//   drawLoad(page, {x, y, 34, 12}, load);
//
// Plates are to scale in height: 450 mm discs for 20 kg and more, smaller by mass below. The sizes are typical of discs in
// gyms, from memory; bumpers are all 450 mm from 10 kg on. Thickness grows with mass, drawn wider than it is so
// that a number fits in. Greys follow the order of the international weightlifting colours by how light they look.
#pragma once

#include "ui/print/sheet_layout.h"

namespace steelyard {

struct DiscSize {
    double heightShare;  // of a 450 mm disc
    double thickMm;      // on paper
    double grey;
};
[[nodiscard]] DiscSize discSize(Mass plate);

// False when there is nothing to draw.
[[nodiscard]] bool hasDrawing(const SheetLoad& load);
void drawLoad(SheetPage& page, const QRectF& area, const SheetLoad& load);

}  // namespace steelyard
