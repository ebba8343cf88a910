// The colours of charts by what they are for, taken from the theme of the palette (light or dark).
#pragma once

#include <QtGui/QColor>
#include <QtGui/QPalette>

#include <array>

namespace steelyard {

struct ChartColours {
    QColor ground;
    QColor ink;       // text
    QColor quietInk;  // tick labels, secondary words; 4.5:1 on the ground
    QColor hairline;  // grid
    QColor data;      // points at standard, trend
    QColor joining;   // the line between sessions
    QColor band;      // fill of the interval
    QColor off;       // off standard
    QColor shade;     // deload weeks
    QColor decision;
    QColor ahead;                 // fill of what is likely to come, laid over itself: 95, 80, 50 %
    std::array<QColor, 3> loads;  // series of the most used loads; their strokes differ too
    QColor change;                // limits of the smallest change
};

[[nodiscard]] ChartColours chartColours(const QPalette& palette);

}  // namespace steelyard
