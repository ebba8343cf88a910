// The shapes of a session on a chart: solid disc (at standard), ring (not watched), cross (off standard), small disc
// (deload). The shape carries the meaning; colour repeats it. A session beyond the scale is a triangle that points at its
// value's side of the panel; what it says of the standard stays in its colour and filling. A set to come is a hollow
// diamond on a whisker.
//
// A single set is a small mark whose shape says how near to failure it went: a triangle that points up (near), a square
// (some in reserve), a triangle that points down (far), a dash (unknown); the nearer, the darker. Filled: watched; hollow:
// not. Repetitions off standard stand as a stem from the counted to the completed ones.
#pragma once

#include "ui/charts/chart_colours.h"
#include "ui/charts/progress_spec.h"

#include <QtGui/QPen>

class QPainter;

namespace steelyard {

inline constexpr double kMarkerRadius = 3.6;

void paintBeyondMarker(QPainter& painter, QPointF at, Beyond beyond, PointKind kind, const ChartColours& colours);
// The whisker from `high` to `low`, in pixels.
void paintNextMarker(QPainter& painter, QPointF at, double low, double high, const ChartColours& colours);
// `size`: 1 where there is room, less where sessions are crowded.
void paintMarker(QPainter& painter, QPointF at, PointKind kind, const ChartColours& colours, double size = 1);

inline constexpr double kSetRadius = 2.7;
void paintSetMarker(QPainter& painter, QPointF at, SetEffort effort, bool watched, double radius,
                    const ChartColours& colours);
// From the counted repetitions to all of them, in pixels.
void paintOffStem(QPainter& painter, QPointF counted, double completed, const ChartColours& colours);

// Strokes that are told apart without their colours: solid, dashed, dotted.
[[nodiscard]] QPen loadPen(const ChartColours& colours, std::size_t place);
[[nodiscard]] QPen aheadPen(const ChartColours& colours);
[[nodiscard]] QPen changePen(const ChartColours& colours);

}  // namespace steelyard
