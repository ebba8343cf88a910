#include "ui/charts/progress_frame.h"

#include "ui/charts/chart_marker.h"

#include <QtCore/QCoreApplication>
#include <QtGui/QFontMetricsF>
#include <QtGui/QPainter>

#include <algorithm>
#include <limits>

namespace steelyard {

void ProgressFrame::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*)
{
    if (m_scene.spec.empty()) return;
    paintBlocks(*painter);
    painter->setFont(m_scene.small);
    paintDates(*painter);
    paintPanel(*painter, *m_scene.capacity, m_scene.spec.capacity);
    paintPanel(*painter, *m_scene.reps, m_scene.spec.reps);
    paintDecisions(*painter);
}

void ProgressFrame::paintPanel(QPainter& painter, const ChartPanel& panel, const PanelSpec& spec) const
{
    const QRectF& plot = panel.plot();
    const QFontMetricsF metrics(m_scene.small);
    const double day = chartDay(m_scene.spec.from);
    for (const double tick : spec.axis.ticks) {
        const double y = std::round(panel.at(day, tick).y()) + 0.5;
        painter.setPen(QPen(m_scene.colours.hairline, 1));
        painter.drawLine(QPointF(plot.left(), y), QPointF(plot.right(), y));
        painter.setPen(m_scene.colours.quietInk);
        const QRectF label(0, y - metrics.height() / 2, plot.left() - 8, metrics.height());
        painter.drawText(label, Qt::AlignRight | Qt::AlignVCenter,
                         m_scene.locale.toString(tick, 'f', spec.axis.decimals));
    }
    painter.setPen(m_scene.colours.ink);
    painter.drawText(QPointF(plot.left(), plot.top() - metrics.descent() - 6), spec.title);
}

void ProgressFrame::paintDates(QPainter& painter) const
{
    const QFontMetricsF metrics(m_scene.small);
    double free = -std::numeric_limits<double>::infinity();
    for (const DateTick& tick : m_scene.spec.dates) {
        const double x = std::round(m_scene.reps->at(chartDay(tick.date), 0).x()) + 0.5;
        painter.setPen(QPen(m_scene.colours.hairline, 1));
        for (const ChartPanel* panel : {m_scene.capacity, m_scene.reps})
            painter.drawLine(QPointF(x, panel->plot().top()), QPointF(x, panel->plot().bottom()));
        const double width = metrics.horizontalAdvance(tick.label);
        const double left = std::min(x - width / 2, m_scene.bounds.right() - width - 1);
        if (left < free) continue;
        painter.setPen(m_scene.colours.quietInk);
        painter.drawText(QPointF(left, m_scene.datesTop + metrics.ascent()), tick.label);
        free = left + width + 8;
    }
}

void ProgressFrame::paintBlocks(QPainter& painter) const
{
    painter.setFont(m_scene.small);
    const QFontMetricsF metrics(m_scene.small);
    const double top = m_scene.stripTop;
    for (const BlockSpan& span : m_scene.spec.blocks) {
        const double left = m_scene.capacity->at(chartDay(span.from), 0).x();
        const double right = m_scene.capacity->at(chartDay(span.to) + 1, 0).x();
        if (span.deload) {
            for (const ChartPanel* panel : {m_scene.capacity, m_scene.reps})
                painter.fillRect(QRectF(left, panel->plot().top(), right - left, panel->plot().height()),
                                 m_scene.colours.shade);
            continue;
        }
        painter.setPen(QPen(m_scene.colours.quietInk, 1));
        const double y = std::round(top + metrics.height()) + 2.5;
        const double end = std::min(right, m_scene.capacity->plot().right()) - 2;
        painter.drawLine(QPointF(left, y), QPointF(end, y));
        painter.drawLine(QPointF(left, y - 3), QPointF(left, y + 3));
        const QString label = metrics.elidedText(span.label, Qt::ElideRight, end - left - 4);
        if (label.size() > 2) painter.drawText(QPointF(left + 3, top + metrics.ascent()), label);
    }
}

void ProgressFrame::paintDecisions(QPainter& painter) const
{
    const QFontMetricsF metrics(m_scene.small);
    const auto& decisions = m_scene.spec.decisions;
    for (std::size_t i = 0; i < decisions.size(); ++i) {
        const double x = m_scene.reps->at(chartDay(decisions[i].date), 0).x();
        const double y = m_scene.decisionTop;
        painter.setPen(Qt::NoPen);
        painter.setBrush(m_scene.colours.decision);
        const double foot = y + metrics.ascent();
        const std::array<QPointF, 3> triangle{QPointF(x, y + 2), QPointF(x - 4, foot), QPointF(x + 4, foot)};
        painter.drawPolygon(triangle.data(), 3);
        const double next = i + 1 < decisions.size() ? m_scene.reps->at(chartDay(decisions[i + 1].date), 0).x() - 10
                                                     : m_scene.bounds.right() - 2;
        painter.setPen(m_scene.colours.quietInk);
        // A decision near the right edge is written to the left of its mark when nothing stands there.
        const double width = metrics.horizontalAdvance(decisions[i].label);
        const bool onlyOne = decisions.size() == 1;
        if (onlyOne && x + 8 + width > next && x - 8 - width > 0) {
            painter.drawText(QPointF(x - 8 - width, foot), decisions[i].label);
            continue;
        }
        const QString label = metrics.elidedText(decisions[i].label, Qt::ElideRight, next - x - 8);
        if (label.size() > 3) painter.drawText(QPointF(x + 8, foot), label);
    }
}

}  // namespace steelyard
