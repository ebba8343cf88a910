#include "ui/charts/panels_chart.h"

#include <QtGui/QFontMetricsF>
#include <QtGui/QKeyEvent>
#include <QtGui/QMouseEvent>
#include <QtGui/QWheelEvent>

#include <algorithm>
#include <cmath>
#include <limits>

namespace steelyard {
namespace {

constexpr double kBetweenColumns = 14;
constexpr double kWidestName = 190;
constexpr double kLeastPlot = 26;

}  // namespace

PanelsChart::PanelsChart(const QString& name, QWidget* parent)
    : QGraphicsView(parent), m_shared(std::make_unique<PanelsScene>())
{
    auto* scene = new QGraphicsScene(this);
    scene->setItemIndexMethod(QGraphicsScene::NoIndex);
    setScene(scene);
    m_frame = new PanelsFrame(*m_shared);
    m_marks = new PanelsMarks(*m_shared);
    scene->addItem(m_frame);
    scene->addItem(m_marks);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setRenderHint(QPainter::Antialiasing);
    setViewportUpdateMode(QGraphicsView::FullViewportUpdate);
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    viewport()->setMouseTracking(true);
    setMinimumSize(360, 220);
    setAccessibleName(name);
    restyle();
}

PanelsChart::~PanelsChart() = default;

void PanelsChart::setSpec(PanelsSpec spec)
{
    m_shared->spec = std::move(spec);
    m_shared->selected = -1;
    m_shared->hovered = -1;
    refill();
    layOut();
    describe();
}

void PanelsChart::refill()
{
    const auto& panels = m_shared->spec.panels;
    m_shared->plots.resize(std::min(m_shared->plots.size(), panels.size()));
    while (m_shared->plots.size() < panels.size()) m_shared->plots.push_back(std::make_unique<PanelPlot>(*scene()));
    for (std::size_t i = 0; i < panels.size(); ++i)
        m_shared->plots[i]->setData(m_shared->spec, panels[i], m_shared->theme);
}

double PanelsChart::widestTick(int column) const
{
    const QFontMetricsF metrics(m_shared->small);
    double widest = 0;
    for (const PlotPanel& panel : m_shared->spec.panels)
        for (const PanelTick& tick : panel.ticks)
            if (panel.column == column && !panel.ticksInside)
                widest = std::max(widest, metrics.horizontalAdvance(tick.label));
    return std::ceil(widest) + 10;
}

double PanelsChart::widestName() const
{
    const QFontMetricsF metrics(m_shared->small);
    double widest = 0;
    for (const PlotPanel& panel : m_shared->spec.panels)
        for (const PanelSeries& series : panel.series)
            if (series.direct) widest = std::max(widest, metrics.horizontalAdvance(series.name) + 20);
    return std::min(std::ceil(widest), kWidestName);
}

void PanelsChart::layOut()
{
    const QRectF bounds(QPointF(0, 0), QSizeF(viewport()->size()));
    m_frame->boundsChange();
    m_marks->boundsChange();
    m_shared->bounds = bounds;
    m_shared->nameRoom = std::max(12.0, widestName());
    setSceneRect(bounds);
    const int columns = m_shared->spec.columns();
    const double width = (bounds.width() - kBetweenColumns * (columns - 1)) / columns;
    for (int column = 0; column < columns; ++column) layOutColumn(column, column * (width + kBetweenColumns), width);
    viewport()->update();
}

void PanelsChart::layOutColumn(int column, double left, double width)
{
    const auto& panels = m_shared->spec.panels;
    const QRectF& bounds = m_shared->bounds;
    double weights = 0;
    int count = 0;
    for (const PlotPanel& panel : panels)
        if (panel.column == column) {
            weights += panel.weight;
            ++count;
        }
    if (count == 0) return;
    const double line = std::ceil(QFontMetricsF(m_shared->small).height());
    const double title = line + 6;
    const double axis = m_shared->spec.axisTitle.isEmpty() ? line + 5 : 2 * line + 6;
    const double room = std::max(kLeastPlot * count, bounds.height() - axis - title * count - 4.0 * (count - 1));
    const double ticks = widestTick(column);
    double top = 0;
    for (std::size_t i = 0; i < panels.size(); ++i) {
        if (panels[i].column != column) continue;
        const double height = std::floor(room * panels[i].weight / weights);
        top += title;
        m_shared->plots[i]->setPlot(bounds,
                                    {left + ticks, top, std::max(40.0, width - ticks - m_shared->nameRoom), height});
        top += height + 4;
    }
}

void PanelsChart::restyle()
{
    m_shared->colours = chartColours(palette());
    m_shared->theme = themeColours(palette());
    m_shared->small = font();
    m_shared->small.setPointSizeF(std::max(7.5, font().pointSizeF() * 0.9));
    setBackgroundBrush(m_shared->colours.ground);
    refill();
    layOut();
}

void PanelsChart::select(int stop)
{
    if (stop < 0 || stop >= static_cast<int>(m_shared->spec.stops.size()) || stop == m_shared->selected) return;
    m_shared->selected = stop;
    viewport()->update();
    describe();
    Q_EMIT selectedStop(stop);
    if (m_shared->hovered < 0) Q_EMIT pointedAt(stop);
}

int PanelsChart::stopOf(int exposure) const
{
    const auto& stops = m_shared->spec.stops;
    const auto found = std::ranges::find(stops, exposure, &PanelStop::exposure);
    return exposure < 0 || found == stops.end() ? -1 : static_cast<int>(found - stops.begin());
}

int PanelsChart::nearest(QPointF position) const
{
    double best = std::numeric_limits<double>::infinity();
    int found = -1;
    for (const auto& plot : m_shared->plots) {
        if (position.x() < plot->plot().left() - 6 || position.x() > plot->plot().right() + 6) continue;
        for (std::size_t i = 0; i < m_shared->spec.stops.size(); ++i) {
            const double away = std::abs(plot->at(m_shared->spec.stops[i].x, 0).x() - position.x());
            if (away >= best) continue;
            best = away;
            found = static_cast<int>(i);
        }
    }
    return found;
}

void PanelsChart::hover(int stop)
{
    if (m_shared->hovered == stop) return;
    m_shared->hovered = stop;
    viewport()->update();
    Q_EMIT pointedAt(m_shared->shown());
}

void PanelsChart::stepTo(int stop)
{
    const int last = static_cast<int>(m_shared->spec.stops.size()) - 1;
    if (last >= 0) select(std::clamp(stop, 0, last));
}

void PanelsChart::keyPressEvent(QKeyEvent* event)
{
    const int last = static_cast<int>(m_shared->spec.stops.size()) - 1;
    const int here = m_shared->selected;
    switch (event->key()) {
    case Qt::Key_Left:
        stepTo(here < 0 ? last : here - 1);
        return;
    case Qt::Key_Right:
        stepTo(here < 0 ? last : here + 1);
        return;
    case Qt::Key_Home:
        stepTo(0);
        return;
    case Qt::Key_End:
        stepTo(last);
        return;
    case Qt::Key_Up:
    case Qt::Key_BracketLeft:
        Q_EMIT lineStepped(-1);
        return;
    case Qt::Key_Down:
    case Qt::Key_BracketRight:
        Q_EMIT lineStepped(1);
        return;
    default:
        QGraphicsView::keyPressEvent(event);
    }
}

void PanelsChart::mouseMoveEvent(QMouseEvent* event)
{
    hover(nearest(event->position()));
}

void PanelsChart::mousePressEvent(QMouseEvent* event)
{
    setFocus(Qt::MouseFocusReason);
    select(nearest(event->position()));
}

void PanelsChart::leaveEvent(QEvent* event)
{
    hover(-1);
    QGraphicsView::leaveEvent(event);
}

void PanelsChart::resizeEvent(QResizeEvent* event)
{
    QGraphicsView::resizeEvent(event);
    layOut();
}

void PanelsChart::changeEvent(QEvent* event)
{
    QGraphicsView::changeEvent(event);
    const auto type = event->type();
    if (type == QEvent::PaletteChange || type == QEvent::FontChange) restyle();
}

void PanelsChart::wheelEvent(QWheelEvent* event)
{
    event->ignore();  // the page scrolls, the chart doesn't
}

void PanelsChart::describe()
{
    QString text = m_shared->spec.summary;
    if (m_shared->selected >= 0)
        text += u' ' + m_shared->spec.stops[static_cast<std::size_t>(m_shared->selected)].words.simplified();
    setAccessibleDescription(text);
}

}  // namespace steelyard
