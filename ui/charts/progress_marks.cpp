#include "ui/charts/chart_marker.h"
#include "ui/charts/progress_frame.h"
#include "ui/charts/progress_key.h"

#include <QtGui/QFontMetricsF>
#include <QtGui/QPainter>

#include <algorithm>
#include <limits>

namespace steelyard {
namespace {

constexpr double kLeastSetRadius = 1.5;
constexpr double kLeastMarkerSize = 0.55;
constexpr double kRoomOfMarker = 6;  // px from session to session at which marks have their whole size

QDate windowDay(double day)
{
    return QDate::fromJulianDay(static_cast<qint64>(day));
}

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
    paintSets(*painter);
    const double size = std::clamp(m_scene.sessionRoom() / kRoomOfMarker, kLeastMarkerSize, 1.0);
    const auto paintAll = [&](const ChartPanel& panel, const PanelSpec& spec) {
        for (const ChartPoint& point : spec.points)
            if (!m_scene.inSight(point.date))
                continue;
            else if (point.beyond == Beyond::No)
                paintMarker(*painter, panel.at(point), point.kind, m_scene.colours, size);
            else
                paintBeyond(*painter, panel, point);
    };
    paintAll(*m_scene.capacity, m_scene.spec.capacity);
    paintAll(*m_scene.reps, m_scene.spec.reps);
    paintLoadNames(*painter);
    paintNext(*painter);
    paintLoads(*painter);
    paintKey(*painter, progressKey(m_scene.spec, m_scene.colours), m_scene);
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
        if (!point || !m_scene.inSight(point->date)) return;
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
        if (run.to < windowDay(m_scene.window.low()) || run.from > windowDay(m_scene.window.high())) continue;
        const double x = std::max(m_scene.x(run.from), m_scene.reps->plot().left()) - kMarkerRadius;
        if (x < free) continue;
        const double width = metrics.horizontalAdvance(run.label);
        // Written along the top of the panel, where no point comes (the axis keeps the room).
        const double y = m_scene.reps->plot().top() + metrics.ascent() + 1;
        painter.drawText(QPointF(std::min(x, m_scene.bounds.right() - width), y), run.label);
        free = x + width + 8;
    }
    if (const auto& next = m_scene.spec.next; next && !next->label.isEmpty() && m_scene.inSight(next->date)) {
        const double width = metrics.horizontalAdvance(next->label);
        const double x =
            std::min(m_scene.reps->at(chartDay(next->date), 0).x() - width / 2, m_scene.bounds.right() - width);
        if (x >= free) painter.drawText(QPointF(x, m_scene.reps->plot().top() + metrics.ascent() + 1), next->label);
    }
}

void ProgressMarks::paintNext(QPainter& painter) const
{
    const auto& next = m_scene.spec.next;
    if (!next || !m_scene.inSight(next->date)) return;
    const double day = chartDay(next->date);
    const ChartPanel& panel = *m_scene.reps;
    paintNextMarker(painter, panel.at(day, next->reps), panel.at(day, next->low80).y(), panel.at(day, next->high80).y(),
                    m_scene.colours);
}

void ProgressMarks::paintSets(QPainter& painter) const
{
    const auto& sets = m_scene.spec.sets;
    if (sets.empty()) return;
    const ChartPanel& panel = *m_scene.reps;
    // Side by side where a session has room for it, on one another and smaller where many sessions are in sight.
    const double room = m_scene.sessionRoom();
    const double apart = std::clamp((room - 2) / 4, 0.0, 5.0);
    const double radius = std::clamp(room / 5, kLeastSetRadius, kSetRadius);
    for (const SetMark& set : sets) {
        if (!m_scene.inSight(set.date) || !onScale(set.counted)) continue;
        const double aside = (set.number - 0.5 * (set.of + 1)) * apart;
        const QPointF at = panel.at(chartDay(set.date), set.counted) + QPointF(aside, 0);
        if (set.reps > set.counted)
            paintOffStem(painter, at, panel.at(chartDay(set.date), onScale(set.reps) ? set.reps : set.counted).y(),
                         m_scene.colours);
        paintSetMarker(painter, at, set.effort, set.watched, radius, m_scene.colours);
    }
}

bool ProgressMarks::onScale(int reps) const
{
    const ChartAxis& axis = m_scene.axes.reps;
    return reps >= axis.low && reps <= axis.high;
}

// The load of a series at its right end; those that would overlap give way downwards.
void ProgressMarks::paintLoadNames(QPainter& painter) const
{
    if (m_scene.spec.loadSeries.size() < 2) return;
    const QFontMetricsF metrics(m_scene.small);
    std::vector<QRectF> taken;
    for (std::size_t i = 0; i < m_scene.spec.loadSeries.size(); ++i) {
        const LoadSeries& series = m_scene.spec.loadSeries[i];
        const QPointF* last = nullptr;
        for (const auto& run : series.runs)
            for (const QPointF& point : run)
                if (m_scene.window.holds(point.x())) last = &point;
        if (!last) continue;
        const double width = metrics.horizontalAdvance(series.label);
        QRectF box(m_scene.reps->at(last->x(), last->y()) + QPointF(kMarkerRadius + 4, -metrics.height() / 2),
                   QSizeF(width, metrics.height()));
        box.moveRight(std::min(box.right(), m_scene.bounds.right()));
        box.moveTop(std::max(box.top(), m_scene.reps->plot().top() + metrics.height() + 2));  // below the loads
        while (std::ranges::any_of(taken, [&](const QRectF& other) { return other.intersects(box); }))
            box.translate(0, metrics.height());
        taken.push_back(box);
        QColor ground = m_scene.colours.ground;
        ground.setAlpha(205);
        painter.fillRect(box, ground);
        painter.setPen(loadPen(m_scene.colours, i).color());
        painter.drawText(box, Qt::AlignLeft | Qt::AlignVCenter, series.label);
    }
}

}  // namespace steelyard
