#include "ui/charts/chart_panel.h"

#include "ui/charts/chart_marker.h"

#include <QtCharts/QAreaSeries>
#include <QtCharts/QLegend>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>
#include <QtWidgets/QGraphicsScene>

namespace steelyard {
namespace {

constexpr std::size_t kAheadBands = std::tuple_size_v<decltype(FanDay::low)>;
constexpr double kEdgeRoom = 8;  // px from the edge to the middle of a marker

QList<QPointF> asPointList(const std::vector<QPointF>& points)
{
    return {points.begin(), points.end()};
}

}  // namespace

ChartPanel::ChartPanel(QGraphicsScene& scene)
    : m_chart(new QChart), m_days(new QValueAxis(m_chart)), m_values(new QValueAxis(m_chart))
{
    scene.addItem(m_chart);
    m_chart->legend()->hide();
    m_chart->setBackgroundVisible(false);
    m_chart->setMargins({});
    m_chart->setAcceptHoverEvents(false);
    m_chart->addAxis(m_days, Qt::AlignBottom);
    m_chart->addAxis(m_values, Qt::AlignLeft);
    m_days->setVisible(false);
    m_values->setVisible(false);
}

void ChartPanel::attach(QAbstractSeries* series)
{
    m_chart->addSeries(series);
    series->attachAxis(m_days);
    series->attachAxis(m_values);
}

ChartPanel::Stretch ChartPanel::makeStretch()
{
    Stretch stretch{new QLineSeries(m_chart), new QLineSeries(m_chart), new QLineSeries(m_chart), nullptr};
    stretch.band = new QAreaSeries(stretch.high, stretch.low);
    stretch.band->setParent(m_chart);
    attach(stretch.band);
    attach(stretch.middle);
    colour(stretch);
    return stretch;
}

void ChartPanel::colour(const Stretch& stretch) const
{
    stretch.middle->setPen(QPen(m_colours.data, 2.0));
    stretch.band->setPen(Qt::NoPen);
    stretch.band->setBrush(m_colours.band);
    // The edges have series of their own, which would draw themselves.
    stretch.low->setPen(Qt::NoPen);
    stretch.high->setPen(Qt::NoPen);
}

void ChartPanel::colourAhead(const Stretch& stretch) const
{
    stretch.band->setPen(QPen(m_colours.joining, 1.0, Qt::DotLine));
    stretch.band->setBrush(m_colours.ahead);
    stretch.low->setPen(Qt::NoPen);
    stretch.high->setPen(Qt::NoPen);
}

void ChartPanel::drawTrend(const ProgressSpec& spec)
{
    while (m_stretches.size() < spec.trendStarts.size()) m_stretches.push_back(makeStretch());
    for (std::size_t i = 0; i < m_stretches.size(); ++i) {
        const bool used = i < spec.trendStarts.size();
        const std::size_t from = used ? spec.trendStarts[i] : 0;
        const std::size_t to = !used                             ? 0
                               : i + 1 < spec.trendStarts.size() ? spec.trendStarts[i + 1]
                                                                 : spec.trend.size();
        const auto part = [&](const std::vector<QPointF>& points) {
            return asPointList(
                {points.begin() + static_cast<std::ptrdiff_t>(from), points.begin() + static_cast<std::ptrdiff_t>(to)});
        };
        m_stretches[i].middle->replace(part(spec.trend));
        m_stretches[i].low->replace(part(spec.trendLow));
        m_stretches[i].high->replace(part(spec.trendHigh));
    }
}

void ChartPanel::drawAhead(const std::vector<FanDay>& fan)
{
    if (m_ahead.empty() && fan.empty()) return;
    while (m_ahead.size() < kAheadBands) {
        m_ahead.push_back(makeStretch());
        colourAhead(m_ahead.back());
    }
    for (std::size_t band = 0; band < m_ahead.size(); ++band) {
        QList<QPointF> low;
        QList<QPointF> high;
        for (const FanDay& day : fan) {
            low.emplace_back(day.day, day.low[band]);
            high.emplace_back(day.day, day.high[band]);
        }
        m_ahead[band].low->replace(low);
        m_ahead[band].high->replace(high);
        m_ahead[band].middle->clear();
    }
    std::vector<QPointF> middle;
    middle.reserve(fan.size());
    for (const FanDay& day : fan) middle.emplace_back(day.day, day.median);
    drawLine(middle, Stroke::Ahead);
}

void ChartPanel::drawChange(const ProgressSpec& spec)
{
    if (!spec.realChange) return;
    const double from = chartDay(spec.realChange->from);
    const double to = chartDay(spec.reps.points.back().date);
    for (const double edge : {spec.realChange->low, spec.realChange->high})
        drawLine({{from, edge}, {to, edge}}, Stroke::Change);
}

void ChartPanel::drawLoads(const std::vector<LoadSeries>& loads)
{
    constexpr std::array<Stroke, kMostLoadSeries> kStrokes{Stroke::FirstLoad, Stroke::SecondLoad, Stroke::ThirdLoad};
    for (std::size_t i = 0; i < loads.size(); ++i)
        for (const auto& run : loads[i].runs) drawLine(run, kStrokes[i]);
}

void ChartPanel::setData(const ProgressSpec& spec, const PanelSpec& panel, bool isCapacity)
{
    beginLines();
    if (isCapacity) {
        drawAhead(spec.fan);
        drawTrend(spec);
        drawChange(spec);
    }
    // From one load to another repetitions jump; where the loads have lines of their own, the jumps stand back.
    const bool standsBack = !isCapacity && spec.loadSeries.size() > 1;
    for (const auto& run : panel.runs) drawLine(run, standsBack ? Stroke::QuietRun : Stroke::Run);
    if (!isCapacity) drawLoads(spec.loadSeries);
    endLines();
}

void ChartPanel::setView(double dayLow, double dayHigh, const ChartAxis& values)
{
    m_dayLow = dayLow;
    m_dayHigh = dayHigh;
    m_valueLow = values.low;
    m_valueHigh = values.high;
    m_days->setRange(dayLow, dayHigh);
    m_values->setRange(m_valueLow, m_valueHigh);
}

void ChartPanel::drawLine(const std::vector<QPointF>& points, Stroke stroke)
{
    if (points.size() < 2) return;  // a session by itself is only a point
    if (m_used == m_lines.size()) {
        m_lines.push_back({new QLineSeries(m_chart), stroke});
        attach(m_lines.back().series);
        m_lines.back().series->setPen(penOf(stroke));
    }
    Line& line = m_lines[m_used++];
    if (line.stroke != stroke) {
        line.stroke = stroke;
        line.series->setPen(penOf(stroke));
    }
    line.series->replace(asPointList(points));
}

void ChartPanel::endLines()
{
    for (std::size_t i = m_used; i < m_lines.size(); ++i) m_lines[i].series->clear();
}

QPen ChartPanel::penOf(Stroke stroke) const
{
    switch (stroke) {
    case Stroke::Run:
        return {m_colours.joining, 1.0};
    case Stroke::QuietRun:
        return {m_colours.hairline, 1.0};
    case Stroke::FirstLoad:
        return loadPen(m_colours, 0);
    case Stroke::SecondLoad:
        return loadPen(m_colours, 1);
    case Stroke::ThirdLoad:
        return loadPen(m_colours, 2);
    case Stroke::Ahead:
        return aheadPen(m_colours);
    case Stroke::Change:
        return changePen(m_colours);
    }
    return {};
}

void ChartPanel::setColours(const ChartColours& colours)
{
    m_colours = colours;
    for (const Line& line : m_lines) line.series->setPen(penOf(line.stroke));
    for (const Stretch& stretch : m_stretches) colour(stretch);
    for (const Stretch& band : m_ahead) colourAhead(band);
}

void ChartPanel::setPlot(const QRectF& scene, const QRectF& plot)
{
    m_plot = plot;
    m_chart->setGeometry(scene);
    m_chart->setPlotArea(plot.translated(-scene.topLeft()));
}

QPointF ChartPanel::at(double day, double value) const
{
    const double x = m_plot.left() + (day - m_dayLow) / (m_dayHigh - m_dayLow) * m_plot.width();
    const double y = m_plot.bottom() - (value - m_valueLow) / (m_valueHigh - m_valueLow) * m_plot.height();
    return {x, y};
}

QPointF ChartPanel::at(const ChartPoint& point) const
{
    QPointF place = at(chartDay(point.date), point.value);
    if (point.beyond == Beyond::Above) place.setY(m_plot.top() + m_topTaken + kEdgeRoom);
    if (point.beyond == Beyond::Below) place.setY(m_plot.bottom() - kEdgeRoom);
    return place;
}

}  // namespace steelyard
