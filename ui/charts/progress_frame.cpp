#include "ui/charts/progress_frame.h"

#include "ui/charts/progress_ruler.h"

#include <QtGui/QFontMetricsF>
#include <QtGui/QPainter>

#include <algorithm>
#include <limits>

namespace steelyard {

void ProgressFrame::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*)
{
    if (m_scene.spec.empty()) return;
    painter->setFont(m_scene.small);
    const ProgressRuler ruler(m_scene);
    ruler.paint(*painter);
    paintDates(*painter);
    paintPanel(*painter, *m_scene.capacity, m_scene.spec.capacity.title, m_scene.axes.capacity);
    paintPanel(*painter, *m_scene.reps, m_scene.spec.reps.title, m_scene.axes.reps);
}

void ProgressFrame::paintPanel(QPainter& painter, const ChartPanel& panel, const QString& title,
                               const ChartAxis& axis) const
{
    const QRectF& plot = panel.plot();
    const QFontMetricsF metrics(m_scene.small);
    const double day = m_scene.window.low();
    for (const double tick : axis.ticks) {
        const double y = std::round(panel.at(day, tick).y()) + 0.5;
        painter.setPen(QPen(m_scene.colours.hairline, 1));
        painter.drawLine(QPointF(plot.left(), y), QPointF(plot.right(), y));
        painter.setPen(m_scene.colours.quietInk);
        const QRectF label(0, y - metrics.height() / 2, plot.left() - 8, metrics.height());
        painter.drawText(label, Qt::AlignRight | Qt::AlignVCenter, m_scene.locale.toString(tick, 'f', axis.decimals));
    }
    painter.setPen(m_scene.colours.ink);
    painter.drawText(QPointF(plot.left(), plot.top() - metrics.descent() - 6), title);
}

void ProgressFrame::paintDates(QPainter& painter) const
{
    const QFontMetricsF metrics(m_scene.small);
    double free = -std::numeric_limits<double>::infinity();
    for (const DateTick& tick : m_scene.dates) {
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

}  // namespace steelyard
