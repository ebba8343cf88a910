#include "ui/charts/chart_marker.h"
#include "ui/charts/progress_frame.h"

#include <QtCore/QCoreApplication>
#include <QtGui/QFontMetricsF>
#include <QtGui/QPainter>

#include <algorithm>
#include <limits>

namespace steelyard {
namespace {

struct MarksText {
    Q_DECLARE_TR_FUNCTIONS(MarksText)
};

const ChartPoint* pointOf(const PanelSpec& panel, int exposure)
{
    const auto found = std::ranges::lower_bound(panel.points, exposure, {}, &ChartPoint::exposure);
    return found != panel.points.end() && found->exposure == exposure ? &*found : nullptr;
}

}  // namespace

void ProgressMarks::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*)
{
    if (m_scene.spec.empty()) return;
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setFont(m_scene.small);
    paintPointed(*painter, m_scene.hovered, false);
    paintPointed(*painter, m_scene.selected, true);
    const auto paintAll = [&](const ChartPanel& panel, const PanelSpec& spec) {
        for (const ChartPoint& point : spec.points)
            if (point.beyond == Beyond::No)
                paintMarker(*painter, panel.at(point), point.kind, m_scene.colours);
            else
                paintBeyond(*painter, panel, point);
    };
    paintAll(*m_scene.capacity, m_scene.spec.capacity);
    paintAll(*m_scene.reps, m_scene.spec.reps);
    paintNext(*painter);
    paintLoads(*painter);
    paintKey(*painter);
}

void ProgressMarks::paintBeyond(QPainter& painter, const ChartPanel& panel, const ChartPoint& point) const
{
    const QPointF at = panel.at(point);
    paintBeyondMarker(painter, at, point.beyond, point.kind, m_scene.colours);
    const QFontMetricsF metrics(m_scene.small);
    const double width = metrics.horizontalAdvance(point.label);
    const double right = at.x() + kMarkerRadius + 5;
    const double x = right + width <= m_scene.bounds.right() ? right : at.x() - kMarkerRadius - 5 - width;
    const double foot = at.y() + metrics.ascent() / 2 - 1;
    QColor ground = m_scene.colours.ground;
    ground.setAlpha(205);
    painter.fillRect(QRectF(x - 1, foot - metrics.ascent(), width + 2, metrics.height()), ground);
    painter.setPen(m_scene.colours.ink);
    painter.drawText(QPointF(x, foot), point.label);
}

void ProgressMarks::paintPointed(QPainter& painter, int exposure, bool selected) const
{
    const auto pointed = [&](const ChartPanel& panel, const PanelSpec& spec) {
        const ChartPoint* point = pointOf(spec, exposure);
        if (!point) return;
        const QPointF at = panel.at(*point);
        painter.setPen(QPen(selected ? m_scene.colours.quietInk : m_scene.colours.hairline, 1));
        painter.setBrush(Qt::NoBrush);
        const double x = std::round(at.x()) + 0.5;
        painter.drawLine(QPointF(x, panel.plot().top()), QPointF(x, panel.plot().bottom()));
        painter.setPen(QPen(m_scene.colours.ink, selected ? 1.6 : 1.0));
        painter.setBrush(m_scene.colours.ground);
        painter.drawEllipse(at, kMarkerRadius + 3.4, kMarkerRadius + 3.4);
    };
    pointed(*m_scene.capacity, m_scene.spec.capacity);
    pointed(*m_scene.reps, m_scene.spec.reps);
}

void ProgressMarks::paintLoads(QPainter& painter) const
{
    const QFontMetricsF metrics(m_scene.small);
    painter.setPen(m_scene.colours.quietInk);
    double free = -std::numeric_limits<double>::infinity();
    for (const SameLoad& run : m_scene.spec.loads) {
        const double x = m_scene.reps->at(chartDay(run.from), 0).x() - kMarkerRadius;
        if (x < free) continue;
        const double width = metrics.horizontalAdvance(run.label);
        // Written along the top of the panel, where no point comes (the axis keeps the room).
        const double y = m_scene.reps->plot().top() + metrics.ascent() + 1;
        painter.drawText(QPointF(std::min(x, m_scene.bounds.right() - width), y), run.label);
        free = x + width + 8;
    }
    if (const auto& next = m_scene.spec.next; next && !next->label.isEmpty()) {
        const double width = metrics.horizontalAdvance(next->label);
        const double x =
            std::min(m_scene.reps->at(chartDay(next->date), 0).x() - width / 2, m_scene.bounds.right() - width);
        if (x >= free) painter.drawText(QPointF(x, m_scene.reps->plot().top() + metrics.ascent() + 1), next->label);
    }
}

void ProgressMarks::paintNext(QPainter& painter) const
{
    const auto& next = m_scene.spec.next;
    if (!next) return;
    const double day = chartDay(next->date);
    const ChartPanel& panel = *m_scene.reps;
    paintNextMarker(painter, panel.at(day, next->reps), panel.at(day, next->low80).y(), panel.at(day, next->high80).y(),
                    m_scene.colours);
}

template <class Paint>
double ProgressMarks::paintKeyItem(QPainter& painter, const ChartPanel& panel, const QString& title, double right,
                                   const QString& word, double shapeWidth, const Paint& paintShape) const
{
    const QFontMetricsF metrics(m_scene.small);
    const QRectF& plot = panel.plot();
    const double foot = plot.top() - metrics.descent() - 6;
    const double left = right - metrics.horizontalAdvance(word) - shapeWidth - 5;
    if (left < plot.left() + metrics.horizontalAdvance(title) + 12) return right;
    painter.setPen(m_scene.colours.quietInk);
    painter.drawText(QPointF(left + shapeWidth + 5, foot), word);
    paintShape(QPointF(left + shapeWidth / 2, foot - metrics.xHeight() / 2));
    return left - 12;
}

void ProgressMarks::paintKey(QPainter& painter) const
{
    // Shapes need their words once; only those that are there, at the right end of the title's line. The one that says
    // most without a word comes last and gives way where it is narrow.
    double right = m_scene.capacity->plot().right();
    const auto add = [&](const QString& word, double width, const auto& paintShape) {
        right = paintKeyItem(painter, *m_scene.capacity, m_scene.spec.capacity.title, right, word, width, paintShape);
    };
    if (!m_scene.spec.trend.empty())
        add(MarksText::tr("known then, 90 %"), 18, [&](QPointF at) {
            painter.fillRect(QRectF(at.x() - 9, at.y() - 5, 18, 10), m_scene.colours.band);
            painter.setPen(QPen(m_scene.colours.data, 2));
            painter.drawLine(at - QPointF(9, 0), at + QPointF(9, 0));
        });
    const auto isBeyond = [](const ChartPoint& point) { return point.beyond != Beyond::No; };
    if (std::ranges::any_of(m_scene.spec.capacity.points, isBeyond)
        || std::ranges::any_of(m_scene.spec.reps.points, isBeyond))
        add(MarksText::tr("beyond the scale"), 8,
            [&](QPointF at) { paintBeyondMarker(painter, at, Beyond::Above, PointKind::Standard, m_scene.colours); });
    for (const PointKind kind : {PointKind::OffStandard, PointKind::Unwatched, PointKind::Deload, PointKind::Standard})
        if (std::ranges::any_of(m_scene.spec.reps.points, [&](const ChartPoint& point) { return point.kind == kind; }))
            add(pointKindWord(kind), 8, [&](QPointF at) { paintMarker(painter, at, kind, m_scene.colours); });
    paintNextKey(painter);
}

void ProgressMarks::paintNextKey(QPainter& painter) const
{
    if (!m_scene.spec.next) return;
    paintKeyItem(painter, *m_scene.reps, m_scene.spec.reps.title, m_scene.reps->plot().right(),
                 MarksText::tr("next set, 80 %"), 10,
                 [&](QPointF at) { paintNextMarker(painter, at, at.y() + 7, at.y() - 7, m_scene.colours); });
}

}  // namespace steelyard
