#include "ui/charts/chart_marker.h"

#include <QtGui/QPainter>

namespace steelyard {

void paintMarker(QPainter& painter, QPointF at, PointKind kind, const ChartColours& colours)
{
    switch (kind) {
    case PointKind::Standard:
        painter.setPen(Qt::NoPen);
        painter.setBrush(colours.data);
        painter.drawEllipse(at, kMarkerRadius, kMarkerRadius);
        return;
    case PointKind::Unwatched:
        // Filled with the ground, so that the joining line doesn't run through it.
        painter.setPen(QPen(colours.data, 1.4));
        painter.setBrush(colours.ground);
        painter.drawEllipse(at, kMarkerRadius - 0.4, kMarkerRadius - 0.4);
        return;
    case PointKind::OffStandard: {
        const double r = kMarkerRadius - 0.2;
        painter.setPen(QPen(colours.off, 1.8, Qt::SolidLine, Qt::RoundCap));
        painter.setBrush(Qt::NoBrush);
        painter.drawLine(at + QPointF(-r, -r), at + QPointF(r, r));
        painter.drawLine(at + QPointF(-r, r), at + QPointF(r, -r));
        return;
    }
    case PointKind::Deload:
        painter.setPen(Qt::NoPen);
        painter.setBrush(colours.joining);
        painter.drawEllipse(at, 2.0, 2.0);
        return;
    }
}

}  // namespace steelyard
