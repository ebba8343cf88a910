#include "ui/charts/chart_panel.h"

#include <QtCharts/QAreaSeries>
#include <QtCharts/QLegend>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>
#include <QtWidgets/QGraphicsScene>

namespace steelyard {
namespace {

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
    stretch.middle->setPen(QPen(m_trendInk, 2.0));
    stretch.band->setPen(Qt::NoPen);
    stretch.band->setBrush(m_bandFill);
    // The edges have series of their own, which would draw themselves.
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

void ChartPanel::setData(const ProgressSpec& spec, const PanelSpec& panel, bool withTrend)
{
    m_dayLow = spec.from.isValid() ? chartDay(spec.from) : 0;
    m_dayHigh = spec.to.isValid() ? chartDay(spec.to) : 1;
    m_valueLow = panel.axis.low;
    m_valueHigh = panel.axis.high;
    m_days->setRange(m_dayLow, m_dayHigh);
    m_values->setRange(m_valueLow, m_valueHigh);
    if (withTrend) drawTrend(spec);
    join(panel.runs);
}

void ChartPanel::join(const std::vector<std::vector<QPointF>>& runs)
{
    std::size_t used = 0;
    for (const auto& run : runs) {
        if (run.size() < 2) continue;  // a session by itself is only a point
        if (used == m_runs.size()) {
            auto* series = new QLineSeries(m_chart);
            series->setPen(m_runPen);
            attach(series);
            m_runs.push_back(series);
        }
        m_runs[used++]->replace(asPointList(run));
    }
    for (std::size_t i = used; i < m_runs.size(); ++i) m_runs[i]->clear();
}

void ChartPanel::setColours(const ChartColours& colours)
{
    m_runPen = QPen(colours.joining, 1.0);
    for (QLineSeries* series : m_runs) series->setPen(m_runPen);
    m_trendInk = colours.data;
    m_bandFill = colours.band;
    for (const Stretch& stretch : m_stretches) colour(stretch);
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
