// The shapes of a session on a chart: solid disc (at standard), ring (not watched), cross (off standard), small disc
// (deload). The shape carries the meaning; colour repeats it. A session beyond the scale is a triangle that points at its
// value's side of the panel; what it says of the standard stays in its colour and filling. A set to come is a hollow
// diamond on a whisker.
#pragma once

#include "ui/charts/chart_colours.h"
#include "ui/charts/progress_spec.h"

class QPainter;

namespace steelyard {

inline constexpr double kMarkerRadius = 3.6;

void paintBeyondMarker(QPainter& painter, QPointF at, Beyond beyond, PointKind kind, const ChartColours& colours);
// The whisker from `high` to `low`, in pixels.
void paintNextMarker(QPainter& painter, QPointF at, double low, double high, const ChartColours& colours);
void paintMarker(QPainter& painter, QPointF at, PointKind kind, const ChartColours& colours);

}  // namespace steelyard
