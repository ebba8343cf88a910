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

void paintMarker(QPainter& painter, QPointF at, PointKind kind, const ChartColours& colours, double size)
{
    const double radius = kMarkerRadius * size;
    switch (kind) {
    case PointKind::Standard:
        painter.setPen(Qt::NoPen);
        painter.setBrush(colours.data);
        painter.drawEllipse(at, radius, radius);
        return;
    case PointKind::Unwatched:
        // Filled with the ground, so that the joining line doesn't run through it.
        painter.setPen(QPen(colours.data, 1.4));
        painter.setBrush(colours.ground);
        painter.drawEllipse(at, radius - 0.4, radius - 0.4);
        return;
    case PointKind::OffStandard: {
        const double r = radius - 0.2;
        painter.setPen(QPen(colours.off, 1.8, Qt::SolidLine, Qt::RoundCap));
        painter.setBrush(Qt::NoBrush);
        painter.drawLine(at + QPointF(-r, -r), at + QPointF(r, r));
        painter.drawLine(at + QPointF(-r, r), at + QPointF(r, -r));
        return;
    }
    case PointKind::Deload:
        painter.setPen(Qt::NoPen);
        painter.setBrush(colours.joining);
        painter.drawEllipse(at, 0.55 * radius, 0.55 * radius);
        return;
    }
}

void paintSetMarker(QPainter& painter, QPointF at, SetEffort effort, bool watched, double radius,
                    const ChartColours& colours)
{
    const QColor ink = effort == SetEffort::Near   ? colours.ink
                       : effort == SetEffort::Some ? colours.quietInk
                                                   : colours.joining;
    painter.setPen(QPen(ink, 1.0, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.setBrush(watched ? ink : colours.ground);
    const auto triangle = [&](double up) {
        const std::array<QPointF, 3> corners{at + QPointF(0, -up * (radius + 0.4)),
                                             at + QPointF(-radius - 0.2, up * radius),
                                             at + QPointF(radius + 0.2, up * radius)};
        painter.drawPolygon(corners.data(), 3);
    };
    switch (effort) {
    case SetEffort::Near:
        triangle(1);
        return;
    case SetEffort::Some: {
        const double half = radius * 0.85;
        painter.drawRect(QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half));
        return;
    }
    case SetEffort::Far:
        triangle(-1);
        return;
    case SetEffort::Unknown:
        painter.drawRect(QRectF(at.x() - radius - 0.6, at.y() - 0.8, 2 * radius + 1.2, 1.6));
        return;
    }
}

void paintOffStem(QPainter& painter, QPointF counted, double completed, const ChartColours& colours)
{
    painter.setPen(QPen(colours.off, 1.2, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(counted, QPointF(counted.x(), completed));
    painter.drawLine(QPointF(counted.x() - 2.2, completed), QPointF(counted.x() + 2.2, completed));
}

QPen loadPen(const ChartColours& colours, std::size_t place)
{
    constexpr std::array<Qt::PenStyle, kMostLoadSeries> kStyles{Qt::SolidLine, Qt::DashLine, Qt::DotLine};
    return {colours.loads[place], 1.6, kStyles[place]};
}

QPen aheadPen(const ChartColours& colours)
{
    return {colours.data, 1.6, Qt::DashLine};
}

QPen changePen(const ChartColours& colours)
{
    return {colours.change, 1.2, Qt::DashDotLine};
}

}  // namespace steelyard
