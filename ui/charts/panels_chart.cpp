#include "ui/charts/panels_chart.h"

#include <QtGui/QFontMetricsF>
#include <QtGui/QMouseEvent>

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
    : ChartView(name, {360, 220}, parent), m_shared(std::make_unique<PanelsScene>())
{
    m_frame = new PanelsFrame(*m_shared);
    m_marks = new PanelsMarks(*m_shared);
    scene()->addItem(m_frame);
    scene()->addItem(m_marks);
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
    m_shared->small = smallFont();
    setBackgroundBrush(m_shared->colours.ground);
    refill();
    layOut();
}

void PanelsChart::select(int stop)
{
    if (stop < 0 || stop >= static_cast<int>(m_shared->spec.stops.size()) || stop == m_shared->selected) return;
    m_shared->selected = stop;
    describe();
    Q_EMIT selectedStop(stop);
    noteSelected(stop);
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

void PanelsChart::mousePressEvent(QMouseEvent* event)
{
    setFocus(Qt::MouseFocusReason);
    select(nearest(event->position()));
}

void PanelsChart::describe()
{
    QString text = m_shared->spec.summary;
    if (m_shared->selected >= 0)
        text += u' ' + m_shared->spec.stops[static_cast<std::size_t>(m_shared->selected)].words.simplified();
    setAccessibleDescription(text);
}

}  // namespace steelyard
