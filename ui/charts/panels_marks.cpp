#include "ui/charts/panels_paint.h"

#include <QtGui/QFontMetricsF>
#include <QtGui/QPainter>

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kRadius = 3.4;
constexpr double kKeyLine = 20;
constexpr double kSmallest = 0.6;
constexpr double kBarGap = 1;  // px, between bars that are wide enough for one

QColor inkOf(const PanelSeries& series, const ThemeColours& colours)
{
    return panelPen(series, colours).color();
}

// A name and where the middle of it would like to stand; moved apart so that no two touch.
struct PlacedName {
    double y = 0;
    double height = 0;
    const PanelSeries* series = nullptr;
};

void moveApart(std::vector<PlacedName>& names, double top, double bottom)
{
    std::ranges::stable_sort(names, {}, &PlacedName::y);
    double free = top;
    for (PlacedName& name : names) {
        name.y = std::max(name.y, free + name.height / 2);
        free = name.y + name.height / 2;
    }
    double limit = bottom;
    for (auto name = names.rbegin(); name != names.rend(); ++name) {
        name->y = std::min(name->y, limit - name->height / 2);
        limit = name->y - name->height / 2;
    }
}

}  // namespace

void paintShape(QPainter& painter, QPointF at, PanelShape shape, const QColor& ink, const QColor& ground, bool hollow,
                double scale)
{
    painter.setPen(QPen(ink, 1.3, Qt::SolidLine, Qt::RoundCap, Qt::MiterJoin));
    painter.setBrush(hollow ? ground : ink);
    const double r = scale * (hollow ? kRadius - 0.3 : kRadius);
    switch (shape) {
    case PanelShape::None:
        return;
    case PanelShape::Disc:
        painter.drawEllipse(at, r - 0.4, r - 0.4);
        return;
    case PanelShape::Square:
        painter.drawRect(QRectF(at.x() - r + 0.6, at.y() - r + 0.6, 2 * r - 1.2, 2 * r - 1.2));
        return;
    case PanelShape::Triangle: {
        const std::array<QPointF, 3> corners{at + QPointF(0, -r), at + QPointF(-r, r - 1), at + QPointF(r, r - 1)};
        painter.drawPolygon(corners.data(), 3);
        return;
    }
    case PanelShape::Diamond: {
        const std::array<QPointF, 4> corners{at + QPointF(0, -r), at + QPointF(r, 0), at + QPointF(0, r),
                                             at + QPointF(-r, 0)};
        painter.drawPolygon(corners.data(), 4);
        return;
    }
    case PanelShape::Cross:
        painter.drawLine(at + QPointF(-r + 0.6, -r + 0.6), at + QPointF(r - 0.6, r - 0.6));
        painter.drawLine(at + QPointF(-r + 0.6, r - 0.6), at + QPointF(r - 0.6, -r + 0.6));
        return;
    case PanelShape::Plus:
        painter.drawLine(at + QPointF(-r, 0), at + QPointF(r, 0));
        painter.drawLine(at + QPointF(0, -r), at + QPointF(0, r));
        return;
    }
}

void PanelsMarks::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*)
{
    if (m_scene.spec.empty()) return;
    painter->setFont(m_scene.small);
    paintCursor(*painter);
    for (std::size_t i = 0; i < m_scene.spec.panels.size(); ++i) {
        const PanelPlot& plot = *m_scene.plots[i];
        for (const PanelSeries& series : m_scene.spec.panels[i].series) {
            if (series.barWidth > 0)
                paintBars(*painter, plot, series);
            else
                paintPoints(*painter, plot, series);
        }
        paintZoneEdges(*painter, i);
        paintKey(*painter, i);
        paintNames(*painter, i);
    }
}

void PanelsMarks::paintCursor(QPainter& painter) const
{
    if (m_scene.shown() < 0) return;
    const double day = m_scene.spec.stops[static_cast<std::size_t>(m_scene.shown())].x;
    painter.setPen(QPen(m_scene.theme.accent, 1, m_scene.hovered >= 0 ? Qt::DotLine : Qt::SolidLine));
    for (const auto& plot : m_scene.plots) {
        const double x = std::round(plot->at(day, 0).x()) + 0.5;
        painter.drawLine(QPointF(x, plot->plot().top()), QPointF(x, plot->plot().bottom()));
    }
}

// Once more over the bars, which hide those below.
void PanelsMarks::paintZoneEdges(QPainter& painter, std::size_t index) const
{
    const PanelPlot& plot = *m_scene.plots[index];
    painter.setPen(QPen(m_scene.colours.ink, 1, Qt::DotLine));
    for (const PanelZone& zone : m_scene.spec.panels[index].zones) {
        if (!zone.filled) continue;
        for (const double edge : {zone.low, zone.high}) {
            const double y = std::round(plot.at(0, edge).y()) + 0.5;
            painter.drawLine(QPointF(plot.plot().left(), y), QPointF(plot.plot().right(), y));
        }
    }
}

void PanelsMarks::paintBars(QPainter& painter, const PanelPlot& plot, const PanelSeries& series) const
{
    const QColor ink = inkOf(series, m_scene.theme);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    for (const PanelPoint& point : series.points) {
        const QPointF top = plot.at(point.x - series.barWidth / 2, point.y);
        const QPointF foot = plot.at(point.x + series.barWidth / 2, 0);
        const double left = std::round(top.x());
        const double gap = foot.x() - top.x() >= 4 ? kBarGap : 0;
        const double width = std::max(1.0, std::round(foot.x()) - left - gap);
        const QRectF bar(left, std::round(top.y()), width, std::round(foot.y()) - std::round(top.y()));
        if (point.hollow) {
            painter.setPen(QPen(ink, 1));
            painter.setBrush(Qt::NoBrush);
            painter.drawRect(bar.adjusted(0, 0, -1, 0));
        } else {
            painter.fillRect(bar, ink);
        }
    }
    painter.restore();
}

void PanelsMarks::paintPoints(QPainter& painter, const PanelPlot& plot, const PanelSeries& series) const
{
    const QColor ink = inkOf(series, m_scene.theme);
    const QFontMetricsF metrics(m_scene.small);
    // Marks that would cover each other are drawn smaller.
    const double room = plot.plot().width() / static_cast<double>(std::max<std::size_t>(1, series.points.size()));
    const double scale = std::clamp(room / (2 * kRadius), kSmallest, 1.0);
    for (const PanelPoint& point : series.points) {
        const QPointF at = plot.at(point.x, point.y);
        paintShape(painter, at, series.shape, ink, m_scene.colours.ground, point.hollow, scale);
        if (point.label.isEmpty()) continue;
        const double width = metrics.horizontalAdvance(point.label);
        const bool right = at.x() + 6 + width <= plot.plot().right() + 2;
        painter.setPen(m_scene.colours.ink);
        painter.drawText(QPointF(right ? at.x() + 6 : at.x() - 6 - width, at.y() + metrics.ascent() / 2 - 1),
                         point.label);
    }
}

void PanelsMarks::paintKey(QPainter& painter, std::size_t index) const
{
    const PlotPanel& panel = m_scene.spec.panels[index];
    const QRectF& area = m_scene.plots[index]->plot();
    const QFontMetricsF metrics(m_scene.small);
    const double y = area.top() - metrics.descent() - 4;
    const double least = area.left() + metrics.horizontalAdvance(panel.title) + 12;
    double right = area.right();
    for (auto series = panel.series.rbegin(); series != panel.series.rend(); ++series) {
        if (series->name.isEmpty() || series->direct) continue;
        const double drawn = series->line == PanelLine::None ? 10 : kKeyLine;
        const double width = drawn + 4 + metrics.horizontalAdvance(series->name);
        if (right - width < least) return;
        const double left = right - width;
        const QPointF middle(left + drawn / 2, y - metrics.ascent() / 2 + 1);
        if (series->line != PanelLine::None) {
            painter.setPen(panelPen(*series, m_scene.theme));
            painter.drawLine(middle - QPointF(drawn / 2, 0), middle + QPointF(drawn / 2, 0));
        }
        const bool hollow = !series->points.empty() && std::ranges::all_of(series->points, &PanelPoint::hollow);
        paintShape(painter, middle, series->shape, inkOf(*series, m_scene.theme), m_scene.colours.ground, hollow);
        painter.setPen(m_scene.colours.ink);
        painter.drawText(QPointF(left + drawn + 4, y), series->name);
        right = left - 12;
    }
}

void PanelsMarks::paintNames(QPainter& painter, std::size_t index) const
{
    const PanelPlot& plot = *m_scene.plots[index];
    const QFontMetricsF metrics(m_scene.small);
    const double left = plot.plot().right() + 6;
    const double room = plot.plot().right() + m_scene.nameRoom - left - 14;
    const auto& all = m_scene.spec.panels[index].series;
    // Two or three lines each while there is room for them.
    const auto named = std::ranges::count_if(all, [](const PanelSeries& one) { return one.direct; });
    const double most =
        std::floor(plot.plot().height() / std::max<double>(1, static_cast<double>(named)) / metrics.height());
    const double tallest = std::clamp(most, 1.0, 3.0) * metrics.height();
    const int flags = Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap;
    std::vector<PlacedName> names;
    for (const PanelSeries& series : all)
        if (series.direct && !series.points.empty()) {
            const double height = metrics.boundingRect(QRectF(0, 0, room, 1000), flags, series.name).height();
            names.push_back({plot.at(0, series.points.back().y).y(), std::min(height, tallest), &series});
        }
    moveApart(names, plot.plot().top(), plot.plot().bottom());
    for (const PlacedName& name : names) {
        const PanelPoint& last = name.series->points.back();
        const QPointF end = plot.at(last.x, last.y);
        painter.setPen(QPen(m_scene.colours.quietInk, 1, Qt::DotLine));
        if (end.x() < left - 10 || std::abs(end.y() - name.y) > 3)
            painter.drawLine(end + QPointF(5, 0), QPointF(left - 2, name.y));
        paintShape(painter, QPointF(left + 4, name.y), name.series->shape, inkOf(*name.series, m_scene.theme),
                   m_scene.colours.ground, false);
        painter.setPen(m_scene.colours.ink);
        const QRectF box(left + 12, name.y - name.height / 2, room, name.height);
        const QString text = name.height < 1.5 * metrics.height()
                                 ? metrics.elidedText(name.series->name, Qt::ElideRight, room)
                                 : name.series->name;
        painter.drawText(box, flags, text);
    }
}

}  // namespace steelyard
