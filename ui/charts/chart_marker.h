// The shapes of a session on a chart: solid disc (at standard), ring (not watched), cross (off standard), small disc
// (deload). The shape carries the meaning; colour repeats it.
#pragma once

#include "ui/charts/chart_colours.h"
#include "ui/charts/progress_spec.h"

class QPainter;

namespace steelyard {

inline constexpr double kMarkerRadius = 3.6;

void paintMarker(QPainter& painter, QPointF at, PointKind kind, const ChartColours& colours);

}  // namespace steelyard
