// One panel of a chart of panels: a QChart that draws the lines and their bands, and knows where a value stands on the scene.
// Axes, marks and words are painted by the frame and the marks (panels_paint.h).
#pragma once

#include "ui/charts/panels_spec.h"
#include "ui/shell/theme.h"

#include <QtCharts/QChart>

class QValueAxis;

namespace steelyard {

class PanelPlot {
public:
    explicit PanelPlot(QGraphicsScene& scene);
    ~PanelPlot();
    PanelPlot(const PanelPlot&) = delete;
    PanelPlot& operator=(const PanelPlot&) = delete;

    void setData(const PanelsSpec& spec, const PlotPanel& panel, const ThemeColours& colours);
    void setPlot(const QRectF& scene, const QRectF& plot);
    [[nodiscard]] const QRectF& plot() const { return m_plot; }
    [[nodiscard]] QPointF at(double x, double y) const;

private:
    void addBand(const PanelSeries& series, const ThemeColours& colours);
    void addRuns(const PanelSeries& series, const ThemeColours& colours);

    QChart* m_chart;
    QValueAxis* m_across;
    QValueAxis* m_up;
    QRectF m_plot;
    double m_left = 0;
    double m_right = 1;
    double m_low = 0;
    double m_high = 1;
};

[[nodiscard]] QPen panelPen(const PanelSeries& series, const ThemeColours& colours);

}  // namespace steelyard
