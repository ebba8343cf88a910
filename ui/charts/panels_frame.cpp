#include "ui/charts/panels_paint.h"

#include <QtGui/QFontMetricsF>
#include <QtGui/QPainter>

#include <algorithm>
#include <cmath>
#include <limits>

namespace steelyard {
namespace {

constexpr int kShadeAlpha = 24;  // small panels need more than a large one

}  // namespace

void PanelsFrame::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*)
{
    if (m_scene.spec.empty()) return;
    painter->setFont(m_scene.small);
    const auto& panels = m_scene.spec.panels;
    for (std::size_t i = 0; i < panels.size(); ++i) {
        paintGround(*painter, i);
        paintGrid(*painter, i);
        paintZoneWords(*painter, i);
        const bool last = std::none_of(panels.begin() + static_cast<std::ptrdiff_t>(i) + 1, panels.end(),
                                       [&](const PlotPanel& other) { return other.column == panels[i].column; });
        if (last) paintAxis(*painter, *m_scene.plots[i]);
    }
}

void PanelsFrame::paintGround(QPainter& painter, std::size_t index) const
{
    const PanelPlot& plot = *m_scene.plots[index];
    const QRectF& area = plot.plot();
    QColor grey = m_scene.colours.shade;
    grey.setAlpha(kShadeAlpha);
    for (const PanelShade& shade : m_scene.spec.shades) {
        const double left = plot.at(shade.from, 0).x();
        painter.fillRect(QRectF(left, area.top(), plot.at(shade.to, 0).x() - left, area.height()), grey);
    }
    for (const PanelZone& zone : m_scene.spec.panels[index].zones) {
        const double top = plot.at(0, zone.high).y();
        const double bottom = plot.at(0, zone.low).y();
        if (zone.filled) painter.fillRect(QRectF(area.left(), top, area.width(), bottom - top), m_scene.colours.band);
        if (zone.filled) continue;  // its edges are drawn over the bars
        painter.setPen(QPen(m_scene.colours.quietInk, 1, Qt::DotLine));
        painter.drawLine(QPointF(area.left(), top), QPointF(area.right(), top));
    }
}

void PanelsFrame::paintGrid(QPainter& painter, std::size_t index) const
{
    const PanelPlot& plot = *m_scene.plots[index];
    const PlotPanel& panel = m_scene.spec.panels[index];
    const QRectF& area = plot.plot();
    const QFontMetricsF metrics(m_scene.small);
    painter.setPen(QPen(m_scene.colours.hairline, 1));
    for (const PanelTick& tick : m_scene.spec.ticks) {
        const double x = std::round(plot.at(tick.at, 0).x()) + 0.5;
        painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()));
    }
    double free = std::numeric_limits<double>::infinity();  // ticks come from below or from above
    for (const PanelTick& tick : panel.ticks) {
        const double y = std::round(plot.at(0, tick.at).y()) + 0.5;
        painter.setPen(QPen(m_scene.colours.hairline, 1));
        painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y));
        if (panel.ticksInside) {
            painter.setPen(m_scene.colours.quietInk);
            painter.drawText(QPointF(area.left() + 4, y - metrics.descent() - 3), tick.label);
            continue;
        }
        if (std::abs(y - free) < metrics.height() - 3) continue;
        painter.setPen(m_scene.colours.quietInk);
        const double room = area.left() - 8;
        const QRectF label(area.left() - 8 - room, y - metrics.height() / 2, room, metrics.height());
        painter.drawText(label, Qt::AlignRight | Qt::AlignVCenter, tick.label);
        free = y;
    }
    painter.setPen(m_scene.colours.ink);
    painter.drawText(QPointF(area.left(), area.top() - metrics.descent() - 4),
                     metrics.elidedText(panel.title, Qt::ElideRight, area.width()));
}

void PanelsFrame::paintZoneWords(QPainter& painter, std::size_t index) const
{
    const PanelPlot& plot = *m_scene.plots[index];
    const QFontMetricsF metrics(m_scene.small);
    for (const PanelZone& zone : m_scene.spec.panels[index].zones) {
        const double top = plot.at(0, zone.high).y();
        if (zone.label.isEmpty() || plot.at(0, zone.low).y() - top < metrics.height() - 2) continue;
        // On the ground, so that no grid runs through the words.
        const QRectF box(plot.plot().left() + 2, top + 1, metrics.horizontalAdvance(zone.label) + 4,
                         metrics.height() - 1);
        painter.fillRect(box, m_scene.colours.ground);
        painter.setPen(m_scene.colours.quietInk);
        painter.drawText(QPointF(box.left() + 2, top + metrics.ascent()), zone.label);
    }
}

void PanelsFrame::paintAxis(QPainter& painter, const PanelPlot& plot) const
{
    const QRectF& area = plot.plot();
    const QFontMetricsF metrics(m_scene.small);
    const double top = area.bottom() + 4;
    double free = -std::numeric_limits<double>::infinity();
    painter.setPen(m_scene.colours.quietInk);
    for (const PanelTick& tick : m_scene.spec.ticks) {
        const double width = metrics.horizontalAdvance(tick.label);
        const double x = plot.at(tick.at, 0).x();
        const double left = std::min(x - width / 2, area.right() + m_scene.nameRoom - width);
        if (left < free) continue;
        painter.drawText(QPointF(left, top + metrics.ascent()), tick.label);
        free = left + width + 8;
    }
    if (m_scene.spec.axisTitle.isEmpty()) return;
    painter.setPen(m_scene.colours.ink);
    painter.drawText(QRectF(area.left(), top + metrics.height(), area.width(), metrics.height()), Qt::AlignHCenter,
                     m_scene.spec.axisTitle);
}

}  // namespace steelyard
