#include "ui/charts/progress_chart.h"

#include "ui/charts/progress_key.h"
#include "ui/charts/progress_ruler.h"
#include "ui/format/format.h"

#include <QtGui/QFontMetricsF>
#include <QtGui/QHelpEvent>
#include <QtGui/QKeyEvent>
#include <QtGui/QMouseEvent>
#include <QtGui/QWheelEvent>
#include <QtWidgets/QApplication>
#include <QtWidgets/QToolTip>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kReach = 18;  // px from the mouse to a session
constexpr double kZoomStep = 0.7;
constexpr double kPanShare = 0.25;  // of what is in sight
constexpr int kDateLabels = 9;

}  // namespace

ProgressChart::ProgressChart(QWidget* parent)
    : ChartView(tr("Progress chart"), {360, 260}, parent), m_shared(std::make_unique<ProgressScene>())
{
    m_capacity = std::make_unique<ChartPanel>(*scene());
    m_reps = std::make_unique<ChartPanel>(*scene());
    m_shared->capacity = m_capacity.get();
    m_shared->reps = m_reps.get();
    m_frame = new ProgressFrame(*m_shared);
    m_marks = new ProgressMarks(*m_shared);
    scene()->addItem(m_frame);
    scene()->addItem(m_marks);
    restyle();
    describe();
}

ProgressChart::~ProgressChart() = default;

void ProgressChart::setSpec(ProgressSpec spec)
{
    m_shared->spec = std::move(spec);
    m_shared->selected = -1;
    m_shared->hovered = -1;
    m_capacity->setData(m_shared->spec, m_shared->spec.capacity, true);
    m_reps->setData(m_shared->spec, m_shared->spec.reps, false);
    if (m_shared->spec.from.isValid())
        m_shared->window.setWhole(chartDay(m_shared->spec.from), chartDay(m_shared->spec.to));
    applyWindow();
    describe();
}

void ProgressChart::layOut()
{
    const QRectF bounds(QPointF(0, 0), QSizeF(viewport()->size()));
    m_frame->boundsChange();
    m_marks->boundsChange();
    m_shared->bounds = bounds;
    setSceneRect(bounds);
    const QFontMetricsF metrics(m_shared->small);
    const auto widest = [&](const ChartAxis& axis) {
        double width = 0;
        for (const double tick : axis.ticks)
            width = std::max(width, metrics.horizontalAdvance(m_shared->locale.toString(tick, 'f', axis.decimals)));
        return width;
    };
    const double left = std::ceil(std::max(widest(m_shared->axes.capacity), widest(m_shared->axes.reps))) + 10;
    const double line = std::ceil(metrics.height());
    m_shared->stripTop = 1;
    const double strip = m_shared->spec.blocks.empty() ? 0 : line + 9;
    const double decisions = m_shared->spec.decisions.empty() ? 0 : line + 5;
    const double trials = m_shared->spec.trials.empty() ? 0 : line + 3;
    const double top = m_shared->stripTop + strip + line + 6;
    const double notes = m_shared->spec.notes.empty() ? 0 : line + 3;
    const int key = keyLines(progressKey(m_shared->spec, m_shared->colours), metrics, bounds.width() - left);
    const double bottom = bounds.height() - line - 5 - trials - decisions - notes - key * line - 4;
    const double between = line + 16;
    const double plots = std::max(40.0, bottom - top - between);
    const double upper = std::floor(plots * 0.54);
    const double width = std::max(40.0, bounds.width() - left - 12);
    m_capacity->setPlot(bounds, {left, top, width, upper});
    m_reps->keepTopFree(line + 2);  // the loads stand there
    m_reps->setPlot(bounds, {left, top + upper + between, width, plots - upper});
    m_shared->datesTop = m_reps->plot().bottom() + 4;
    m_shared->trialTop = m_shared->datesTop + line + 3;
    m_shared->decisionTop = m_shared->trialTop + trials;
    m_shared->notesTop = m_shared->decisionTop + decisions;
    m_shared->keyTop = bounds.height() - key * line - 1;
    viewport()->update();
}

void ProgressChart::restyle()
{
    m_shared->colours = chartColours(palette());
    m_shared->font = font();
    m_shared->small = smallFont();
    m_shared->locale = locale();
    setBackgroundBrush(m_shared->colours.ground);
    m_capacity->setColours(m_shared->colours);
    m_reps->setColours(m_shared->colours);
    layOut();
}

void ProgressChart::select(int exposure)
{
    const auto& points = m_shared->spec.reps.points;
    if (std::ranges::none_of(points, [&](const ChartPoint& point) { return point.exposure == exposure; })) return;
    if (m_shared->selected == exposure) return;
    m_shared->selected = exposure;
    const auto& chosen = points[static_cast<std::size_t>(selectedStep())];
    if (!m_shared->inSight(chosen.date)) {
        m_shared->window.show(chartDay(chosen.date));
        applyWindow();
    }
    describe();
    Q_EMIT selectedSession(exposure);
    noteSelected(exposure);
}

int ProgressChart::nearest(QPointF position) const
{
    double best = kReach * kReach;
    int found = -1;
    const auto look = [&](const ChartPanel& panel, const PanelSpec& spec) {
        for (const ChartPoint& point : spec.points) {
            if (!m_shared->inSight(point.date)) continue;
            const QPointF away = panel.at(point) - position;
            const double square = QPointF::dotProduct(away, away);
            if (square < best) {
                best = square;
                found = point.exposure;
            }
        }
    };
    look(*m_capacity, m_shared->spec.capacity);
    look(*m_reps, m_shared->spec.reps);
    return found;
}

QPointF ProgressChart::place(int exposure) const
{
    for (const ChartPoint& point : m_shared->spec.reps.points)
        if (point.exposure == exposure) return m_reps->at(point);
    return {-1, -1};
}

int ProgressChart::selectedStep() const
{
    const auto& points = m_shared->spec.reps.points;
    const auto found = std::ranges::find(points, m_shared->selected, &ChartPoint::exposure);
    return found == points.end() ? -1 : static_cast<int>(found - points.begin());
}

void ProgressChart::selectStep(int step)
{
    select(m_shared->spec.reps.points[static_cast<std::size_t>(step)].exposure);
}

void ProgressChart::keyPressEvent(QKeyEvent* event)
{
    if (moveInTime(*event)) return;
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter && selectedStep() >= 0)
        Q_EMIT setsWanted(m_shared->selected);
    else
        ChartView::keyPressEvent(event);
}

bool ProgressChart::moveInTime(const QKeyEvent& event)
{
    TimeWindow& window = m_shared->window;
    const int here = selectedStep();
    const double around = here < 0 ? 0.5 * (window.low() + window.high())
                                   : chartDay(m_shared->spec.reps.points[static_cast<std::size_t>(here)].date);
    const bool ctrl = event.modifiers().testFlag(Qt::ControlModifier);
    switch (event.key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        zoom(kZoomStep, around);
        return true;
    case Qt::Key_Minus:
        zoom(1 / kZoomStep, around);
        return true;
    case Qt::Key_0:
        window.showAll();
        applyWindow();
        return true;
    case Qt::Key_Left:
        if (ctrl) pan(-kPanShare * window.width());
        return ctrl;
    case Qt::Key_Right:
        if (ctrl) pan(kPanShare * window.width());
        return ctrl;
    default:
        return false;
    }
}

double ProgressChart::dayAt(double x) const
{
    const QRectF& plot = m_reps->plot();
    return m_shared->window.low() + (x - plot.left()) / std::max(1.0, plot.width()) * m_shared->window.width();
}

void ProgressChart::zoom(double factor, double around)
{
    m_shared->window.zoom(factor, around);
    applyWindow();
}

void ProgressChart::pan(double days)
{
    m_shared->window.pan(days);
    applyWindow();
}

void ProgressChart::applyWindow()
{
    const TimeWindow& window = m_shared->window;
    m_shared->axes = window.isWhole() ? ProgressAxes{m_shared->spec.capacity.axis, m_shared->spec.reps.axis}
                                      : progressAxes(m_shared->spec, window.low(), window.high());
    m_capacity->setView(window.low(), window.high(), m_shared->axes.capacity);
    m_reps->setView(window.low(), window.high(), m_shared->axes.reps);
    m_shared->dates = window.isWhole()
                          ? m_shared->spec.dates
                          : dateTicks(QDate::fromJulianDay(static_cast<qint64>(std::ceil(window.low()))),
                                      QDate::fromJulianDay(static_cast<qint64>(window.high())), kDateLabels, locale());
    layOut();
}

QString ProgressChart::tipAt(QPointF position) const
{
    return m_shared->spec.empty() ? QString() : ProgressRuler(*m_shared).tipAt(position);
}

bool ProgressChart::viewportEvent(QEvent* event)
{
    if (event->type() != QEvent::ToolTip) return ChartView::viewportEvent(event);
    const auto* help = static_cast<QHelpEvent*>(event);
    const QString tip = tipAt(help->pos());
    if (tip.isEmpty())
        QToolTip::hideText();
    else
        QToolTip::showText(help->globalPos(), format::plainToolTip(tip), viewport());
    return true;
}

void ProgressChart::mouseMoveEvent(QMouseEvent* event)
{
    if (m_pressed) {
        const QPointF moved = event->position() - *m_pressed;
        if (!m_dragging && moved.manhattanLength() < QApplication::startDragDistance()) return;
        m_dragging = true;
        pan(dayAt(m_pressed->x()) - dayAt(event->position().x()));
        m_pressed = event->position();
        return;
    }
    ChartView::mouseMoveEvent(event);
}

void ProgressChart::mousePressEvent(QMouseEvent* event)
{
    setFocus(Qt::MouseFocusReason);
    if (event->button() != Qt::LeftButton) return;
    m_pressed = event->position();
    m_dragging = false;
}

// What was pressed is chosen when it is let go, unless it was dragged.
void ProgressChart::mouseReleaseEvent(QMouseEvent* event)
{
    if (event->button() != Qt::LeftButton || !m_pressed) return;
    m_pressed.reset();
    if (m_dragging) return;
    if (const int found = nearest(event->position()); found >= 0) select(found);
}

void ProgressChart::mouseDoubleClickEvent(QMouseEvent* event)
{
    const int found = nearest(event->position());
    if (found < 0) return;
    select(found);
    Q_EMIT setsWanted(found);
}

void ProgressChart::wheelEvent(QWheelEvent* event)
{
    if (!event->modifiers().testFlag(Qt::ControlModifier)) {
        ChartView::wheelEvent(event);
        return;
    }
    constexpr double kNotch = 120;
    zoom(std::pow(kZoomStep, event->angleDelta().y() / kNotch), dayAt(event->position().x()));
    event->accept();
}

QStringList ProgressChart::readout(int exposure) const
{
    const auto& points = m_shared->spec.reps.points;
    const auto at = std::ranges::find(points, exposure, &ChartPoint::exposure);
    if (at == points.end()) return {};
    const auto place = static_cast<std::size_t>(at - points.begin());
    return place < m_shared->spec.readouts.size() ? m_shared->spec.readouts[place] : QStringList();
}

void ProgressChart::describe()
{
    QString text = m_shared->spec.summary;
    const int here = selectedStep();
    if (here >= 0) {
        const ChartPoint& point = m_shared->spec.reps.points[static_cast<std::size_t>(here)];
        text += u' '
                + tr("Selected: %1, %2.")
                      .arg(locale().toString(point.date, QLocale::LongFormat),
                           readout(point.exposure).join(QStringLiteral("; ")));
    }
    setAccessibleDescription(text);
}

}  // namespace steelyard
