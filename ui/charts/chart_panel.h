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

    void setData(const ProgressSpec& spec, const PanelSpec& panel, bool isCapacity);
    // The stretch of time that is in sight, and its values.
    void setView(double dayLow, double dayHigh, const ChartAxis& values);
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
    enum class Stroke { Run, QuietRun, FirstLoad, SecondLoad, ThirdLoad, Ahead, Change };
    struct Line {
        QLineSeries* series;
        Stroke stroke;
    };
    void drawTrend(const ProgressSpec& spec);
    void drawAhead(const std::vector<FanDay>& fan);
    void drawChange(const ProgressSpec& spec);
    void drawLoads(const std::vector<LoadSeries>& loads);
    // Lines are kept and refilled; those not needed are empty.
    void beginLines() { m_used = 0; }
    void drawLine(const std::vector<QPointF>& points, Stroke stroke);
    void endLines();
    [[nodiscard]] QPen penOf(Stroke stroke) const;
    [[nodiscard]] Stretch makeStretch();
    void colour(const Stretch& stretch) const;
    void colourAhead(const Stretch& stretch) const;
    void attach(QAbstractSeries* series);

    QChart* m_chart;
    QValueAxis* m_days;
    QValueAxis* m_values;
    std::vector<Stretch> m_stretches;
    std::vector<Stretch> m_ahead;  // 95, 80, 50 %, the widest below
    std::vector<Line> m_lines;
    std::size_t m_used = 0;
    ChartColours m_colours;
    QRectF m_plot;
    double m_topTaken = 0;
    double m_dayLow = 0;  // in sight
    double m_dayHigh = 1;
    double m_valueLow = 0;
    double m_valueHigh = 1;
};

}  // namespace steelyard
