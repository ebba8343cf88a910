#include "ui/charts/progress_ruler.h"

#include <QtGui/QFontMetricsF>
#include <QtGui/QPainter>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kTickRoom = 8;  // px from a mark to its words
constexpr double kTickReach = 6;
constexpr double kLineReach = 4;

}  // namespace

bool ProgressRuler::inSight(const BlockSpan& span) const
{
    return chartDay(span.to) + 1 > m_scene.window.low() && chartDay(span.from) < m_scene.window.high();
}

QRectF ProgressRuler::through(const BlockSpan& span) const
{
    const QRectF& upper = m_scene.capacity->plot();
    const double left = std::max(m_scene.x(span.from), upper.left());
    const double right = std::min(m_scene.x(span.to.addDays(1)), upper.right());
    return {QPointF(left, upper.top()), QPointF(right, m_scene.reps->plot().bottom())};
}

std::vector<ProgressRuler::Place> ProgressRuler::blocks() const
{
    const QFontMetricsF metrics(m_scene.small);
    std::vector<Place> places;
    for (const BlockSpan& span : m_scene.spec.blocks) {
        if (span.deload || !inSight(span)) continue;
        const QRectF across = through(span);
        const double y = std::round(m_scene.stripTop + metrics.height()) + 2.5;
        const QRectF reach(across.left(), m_scene.stripTop, across.width() - 2, y + 3 - m_scene.stripTop);
        const QRectF words = reach.adjusted(3, 0, -1, 0);
        places.push_back({{across.left(), y},
                          words,
                          metrics.elidedText(span.label, Qt::ElideRight, words.width()),
                          reach,
                          span.tip});
    }
    return places;
}

template <class Tick>
std::vector<ProgressRuler::Place> ProgressRuler::ticks(const std::vector<Tick>& all, double top) const
{
    const QFontMetricsF metrics(m_scene.small);
    std::vector<const Tick*> seen;
    for (const Tick& tick : all)
        if (m_scene.inSight(tick.date)) seen.push_back(&tick);
    std::vector<Place> places;
    for (std::size_t i = 0; i < seen.size(); ++i) {
        const double x = m_scene.x(seen[i]->date);
        const double next = i + 1 < seen.size() ? m_scene.x(seen[i + 1]->date) - 10 : m_scene.bounds.right() - 2;
        const double width = metrics.horizontalAdvance(seen[i]->label);
        QRectF words(x + kTickRoom, top, std::max(0.0, next - x - kTickRoom), metrics.height());
        // One near the right edge is written to the left of its mark when nothing stands there.
        if (seen.size() == 1 && width > words.width() && x - kTickRoom - width > 0)
            words.moveTo(x - kTickRoom - width, top), words.setWidth(width + 1);
        const QString label = metrics.elidedText(seen[i]->label, Qt::ElideRight, words.width());
        const QRectF reach = QRectF(x - kTickReach, top, 2 * kTickReach, metrics.height()).united(words);
        places.push_back(
            {{x, top + metrics.ascent()}, words, label.size() > 3 ? label : QString(), reach, seen[i]->tip});
    }
    return places;
}

std::vector<ProgressRuler::Place> ProgressRuler::trials() const
{
    const QFontMetricsF metrics(m_scene.small);
    std::vector<Place> places;
    double free = -kTickReach;
    for (const TrialTick& tick : m_scene.spec.trials) {
        if (!m_scene.inSight(tick.date)) continue;
        const QString label = tick.counts ? tick.letter : u'(' + tick.letter + u')';
        const double x = m_scene.x(tick.date);
        const double width = metrics.horizontalAdvance(label);
        if (x - width / 2 < free) continue;
        free = x + width / 2 + 1;
        const QRectF words(x - width / 2, m_scene.trialTop, width + 1, metrics.height());
        places.push_back(
            {{x, m_scene.trialTop + metrics.ascent()}, words, label, words.adjusted(-2, 0, 2, 0), tick.tip});
    }
    return places;
}

void ProgressRuler::paintTrials(QPainter& painter) const
{
    painter.setPen(m_scene.colours.ink);
    for (const Place& place : trials()) painter.drawText(place.words, Qt::AlignCenter, place.label);
}

void ProgressRuler::paint(QPainter& painter) const
{
    paintTrials(painter);
    paintThrough(painter);
    paintBlocks(painter);
    paintTicks(painter);
}

void ProgressRuler::paintThrough(QPainter& painter) const
{
    const auto inPanels = [&](const BlockSpan& span, const QBrush& brush) {
        const QRectF across = through(span);
        for (const ChartPanel* panel : {m_scene.capacity, m_scene.reps})
            painter.fillRect(QRectF(across.left(), panel->plot().top(), across.width(), panel->plot().height()), brush);
    };
    for (const BlockSpan& span : m_scene.spec.blocks)
        if (span.deload && inSight(span)) inPanels(span, m_scene.colours.shade);
    const QFontMetricsF metrics(m_scene.small);
    for (const BlockSpan& span : m_scene.spec.layoffs) {
        if (!inSight(span)) continue;
        inPanels(span, QBrush(m_scene.colours.hairline, Qt::BDiagPattern));
        const QRectF across = through(span);
        const QString label = metrics.elidedText(span.label, Qt::ElideRight, across.width() - 4);
        if (label.size() <= 3) continue;
        const QRectF words(across.left(), m_scene.capacity->plot().bottom() - metrics.height() - 2, across.width(),
                           metrics.height());
        painter.setPen(m_scene.colours.quietInk);
        painter.fillRect(QRectF(words.center().x() - metrics.horizontalAdvance(label) / 2 - 2, words.top(),
                                metrics.horizontalAdvance(label) + 4, words.height()),
                         m_scene.colours.ground);
        painter.drawText(words, Qt::AlignCenter, label);
    }
}

void ProgressRuler::paintBlocks(QPainter& painter) const
{
    for (const Place& place : blocks()) {
        painter.setPen(QPen(m_scene.colours.quietInk, 1));
        painter.drawLine(place.mark, QPointF(place.reach.right(), place.mark.y()));
        painter.drawLine(place.mark - QPointF(0, 3), place.mark + QPointF(0, 3));
        if (place.label.size() > 2) painter.drawText(place.words, Qt::AlignLeft | Qt::AlignTop, place.label);
    }
}

void ProgressRuler::paintTicks(QPainter& painter) const
{
    const auto write = [&](const Place& place) {
        painter.setPen(m_scene.colours.quietInk);
        painter.drawText(place.words, Qt::AlignLeft | Qt::AlignTop, place.label);
    };
    for (const Place& place : ticks(m_scene.spec.decisions, m_scene.decisionTop)) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(m_scene.colours.decision);
        const QPointF foot = place.mark;
        const std::array<QPointF, 3> triangle{QPointF(foot.x(), m_scene.decisionTop + 2), foot - QPointF(4, 0),
                                              foot + QPointF(4, 0)};
        painter.drawPolygon(triangle.data(), 3);
        write(place);
    }
    for (const Place& place : ticks(m_scene.spec.notes, m_scene.notesTop)) {
        // A slip of paper: two short lines.
        painter.setPen(QPen(m_scene.colours.quietInk, 1));
        for (const double up : {2.5, 5.5, 8.5})
            painter.drawLine(place.mark + QPointF(-3.5, -up + 0.5),
                             place.mark + QPointF(up > 8 ? 1.0 : 3.5, -up + 0.5));
        write(place);
    }
}

bool ProgressRuler::isOnChange(QPointF at) const
{
    const auto& change = m_scene.spec.realChange;
    if (!change || at.x() < m_scene.x(change->from) || at.x() > m_scene.x(m_scene.spec.reps.points.back().date))
        return false;
    const auto near = [&](double edge) { return std::abs(m_scene.capacity->at(0, edge).y() - at.y()) <= kLineReach; };
    return near(change->low) || near(change->high);
}

QString ProgressRuler::tipAt(QPointF at) const
{
    const auto among = [&](const std::vector<Place>& places) {
        // The later one lies above.
        const auto found =
            std::find_if(places.rbegin(), places.rend(), [&](const Place& place) { return place.reach.contains(at); });
        return found == places.rend() ? QString() : found->tip;
    };
    for (const auto& places :
         {trials(), ticks(m_scene.spec.decisions, m_scene.decisionTop), ticks(m_scene.spec.notes, m_scene.notesTop)})
        if (const QString tip = among(places); !tip.isEmpty()) return tip;
    if (isOnChange(at)) return m_scene.spec.realChange->words;
    for (const auto* spans : {&m_scene.spec.layoffs, &m_scene.spec.blocks})
        for (const BlockSpan& span : *spans)
            if ((span.deload || spans == &m_scene.spec.layoffs) && inSight(span)
                && through(span).adjusted(0, m_scene.stripTop - through(span).top(), 0, 0).contains(at))
                return span.tip;
    return among(blocks());
}

}  // namespace steelyard
