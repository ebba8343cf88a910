// One panel of a progress chart: a QChart that draws the joining line, the trend and its band, and knows where a day and a
// value stand on the scene. Axes, ticks and words are painted by the frame (progress_frame.h), which can place them better.
#pragma once

#include "ui/charts/chart_colours.h"
#include "ui/charts/progress_spec.h"

#include <QtCharts/QChart>

class QAbstractSeries;
class QAreaSeries;
class QLineSeries;
class QValueAxis;

namespace steelyard {

class ChartPanel {
public:
    // The scene's owner owns the chart.
    explicit ChartPanel(QGraphicsScene& scene);

    void setData(const ProgressSpec& spec, const PanelSpec& panel, bool withTrend);
    void setColours(const ChartColours& colours);
    void setPlot(const QRectF& scene, const QRectF& plot);
    [[nodiscard]] const QRectF& plot() const { return m_plot; }
    [[nodiscard]] QPointF at(double day, double value) const;
    // Where a session is drawn: at its value, or, when that lies beyond the scale, within the edge it lies behind.
    [[nodiscard]] QPointF at(const ChartPoint& point) const;
    // Room along the top that is taken by words.
    void keepTopFree(double pixels) { m_topTaken = pixels; }

private:
    // An unbroken stretch of the trend with its band; kept and refilled as the runs are.
    struct Stretch {
        QLineSeries* middle;
        QLineSeries* low;
        QLineSeries* high;
        QAreaSeries* band;
    };
    void join(const std::vector<std::vector<QPointF>>& runs);
    void drawTrend(const ProgressSpec& spec);
    [[nodiscard]] Stretch makeStretch();
    void colour(const Stretch& stretch) const;
    void attach(QAbstractSeries* series);

    QChart* m_chart;
    QValueAxis* m_days;
    QValueAxis* m_values;
    std::vector<Stretch> m_stretches;
    std::vector<QLineSeries*> m_runs;  // kept and refilled; those not needed are empty
    QPen m_runPen;
    QColor m_trendInk;
    QColor m_bandFill;
    QRectF m_plot;
    double m_topTaken = 0;
    double m_dayLow = 0;
    double m_dayHigh = 1;
    double m_valueLow = 0;
    double m_valueHigh = 1;
};

}  // namespace steelyard
