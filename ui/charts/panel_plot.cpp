#include "ui/charts/panel_plot.h"

#include <QtCharts/QAreaSeries>
#include <QtCharts/QLegend>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>
#include <QtWidgets/QGraphicsScene>

namespace steelyard {
namespace {

constexpr int kBandAlpha = 26;  // several bands lie over each other

Qt::PenStyle penStyle(PanelLine line)
{
    switch (line) {
    case PanelLine::None:
        return Qt::NoPen;
    case PanelLine::Solid:
        return Qt::SolidLine;
    case PanelLine::Dash:
        return Qt::DashLine;
    case PanelLine::Dot:
        return Qt::DotLine;
    case PanelLine::DashDot:
        return Qt::DashDotLine;
    }
    return Qt::NoPen;
}

}  // namespace

QPen panelPen(const PanelSeries& series, const ThemeColours& colours)
{
    const auto ink = static_cast<std::size_t>(series.ink) % colours.data.size();
    return {colours.data[ink], series.thick, penStyle(series.line)};
}

PanelPlot::PanelPlot(QGraphicsScene& scene)
    : m_chart(new QChart), m_across(new QValueAxis(m_chart)), m_up(new QValueAxis(m_chart))
{
    scene.addItem(m_chart);
    m_chart->legend()->hide();
    m_chart->setBackgroundVisible(false);
    m_chart->setMargins({});
    m_chart->setAcceptHoverEvents(false);
    m_chart->addAxis(m_across, Qt::AlignBottom);
    m_chart->addAxis(m_up, Qt::AlignLeft);
    m_across->setVisible(false);
    m_up->setVisible(false);
}

PanelPlot::~PanelPlot()
{
    delete m_chart;
}

void PanelPlot::addBand(const PanelSeries& series, const ThemeColours& colours)
{
    if (series.bandLow.size() < 2) return;
    auto* low = new QLineSeries(m_chart);
    auto* high = new QLineSeries(m_chart);
    low->replace(QList<QPointF>(series.bandLow.begin(), series.bandLow.end()));
    high->replace(QList<QPointF>(series.bandHigh.begin(), series.bandHigh.end()));
    auto* band = new QAreaSeries(high, low);
    // The edges go with their band when the series are removed.
    low->setParent(band);
    high->setParent(band);
    QColor fill = panelPen(series, colours).color();
    fill.setAlpha(colours.dark ? kBandAlpha + 12 : kBandAlpha);
    m_chart->addSeries(band);
    band->setPen(Qt::NoPen);
    band->setBrush(fill);
    band->attachAxis(m_across);
    band->attachAxis(m_up);
}

void PanelPlot::addRuns(const PanelSeries& series, const ThemeColours& colours)
{
    if (series.line == PanelLine::None) return;
    for (const auto& run : series.runs) {
        auto* line = new QLineSeries(m_chart);
        line->replace(QList<QPointF>(run.begin(), run.end()));
        m_chart->addSeries(line);
        line->setPen(panelPen(series, colours));
        line->attachAxis(m_across);
        line->attachAxis(m_up);
    }
}

void PanelPlot::setData(const PanelsSpec& spec, const PlotPanel& panel, const ThemeColours& colours)
{
    m_chart->removeAllSeries();
    m_left = spec.low;
    m_right = spec.high;
    m_low = panel.low;
    m_high = panel.high;
    m_across->setRange(m_left, m_right);
    m_up->setRange(m_low, m_high);
    for (const PanelSeries& series : panel.series) addBand(series, colours);
    for (const PanelSeries& series : panel.series) addRuns(series, colours);
}

void PanelPlot::setPlot(const QRectF& scene, const QRectF& plot)
{
    m_plot = plot;
    m_chart->setGeometry(scene);
    m_chart->setPlotArea(plot.translated(-scene.topLeft()));
}

QPointF PanelPlot::at(double x, double y) const
{
    return {m_plot.left() + (x - m_left) / (m_right - m_left) * m_plot.width(),
            m_plot.bottom() - (y - m_low) / (m_high - m_low) * m_plot.height()};
}

}  // namespace steelyard
