#include "ui/charts/chart_marker.h"

#include <QtGui/QPainter>

#include <array>

namespace steelyard {

void paintBeyondMarker(QPainter& painter, QPointF at, Beyond beyond, PointKind kind, const ChartColours& colours)
{
    const QColor ink = kind == PointKind::OffStandard ? colours.off
                       : kind == PointKind::Deload    ? colours.joining
                                                      : colours.data;
    const double up = beyond == Beyond::Above ? -1 : 1;
    const double half = kMarkerRadius + 1;
    painter.setPen(QPen(ink, 1.4, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.setBrush(kind == PointKind::Standard || kind == PointKind::Deload ? ink : colours.ground);
    const std::array<QPointF, 3> triangle{at + QPointF(0, up * half), at + QPointF(-half, -up * half),
                                          at + QPointF(half, -up * half)};
    painter.drawPolygon(triangle.data(), 3);
}

void paintNextMarker(QPainter& painter, QPointF at, double low, double high, const ChartColours& colours)
{
    const double foot = 3;
    painter.setPen(QPen(colours.data, 1.4));
    painter.drawLine(QPointF(at.x(), low), QPointF(at.x(), high));
    for (const double end : {low, high}) painter.drawLine(QPointF(at.x() - foot, end), QPointF(at.x() + foot, end));
    painter.setBrush(colours.ground);
    const double r = kMarkerRadius + 1;
    const std::array<QPointF, 4> diamond{at + QPointF(0, -r), at + QPointF(r, 0), at + QPointF(0, r),
                                         at + QPointF(-r, 0)};
    painter.drawPolygon(diamond.data(), 4);
}

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
