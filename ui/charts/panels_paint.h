// What stands around and over the lines of a chart of panels: shades, zones, grid, ticks and titles (PanelsFrame, below the
// lines); marks, names and the cursor (PanelsMarks, above them).
#pragma once

#include "ui/charts/chart_colours.h"
#include "ui/charts/chart_view.h"
#include "ui/charts/panel_plot.h"

#include <QtGui/QFont>
#include <QtWidgets/QGraphicsItem>

#include <memory>

namespace steelyard {

// Shared by the items; owned by the view.
struct PanelsScene : ChartSelection {  // of stops
    PanelsSpec spec;
    ChartColours colours;
    ThemeColours theme;
    QFont small;
    QRectF bounds;
    std::vector<std::unique_ptr<PanelPlot>> plots;  // by panel
    double nameRoom = 0;                            // right of the plots, for direct labels
};

class PanelsFrame final : public QGraphicsItem {
public:
    explicit PanelsFrame(const PanelsScene& scene) : m_scene(scene) { setZValue(-10); }
    void boundsChange() { prepareGeometryChange(); }
    [[nodiscard]] QRectF boundingRect() const override { return m_scene.bounds; }
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    void paintGround(QPainter& painter, std::size_t panel) const;
    void paintGrid(QPainter& painter, std::size_t panel) const;
    void paintZoneWords(QPainter& painter, std::size_t panel) const;
    void paintAxis(QPainter& painter, const PanelPlot& plot) const;
    const PanelsScene& m_scene;
};

class PanelsMarks final : public QGraphicsItem {
public:
    explicit PanelsMarks(const PanelsScene& scene) : m_scene(scene) { setZValue(10); }
    void boundsChange() { prepareGeometryChange(); }
    [[nodiscard]] QRectF boundingRect() const override { return m_scene.bounds; }
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    void paintCursor(QPainter& painter) const;
    void paintZoneEdges(QPainter& painter, std::size_t panel) const;
    void paintBars(QPainter& painter, const PanelPlot& plot, const PanelSeries& series) const;
    void paintPoints(QPainter& painter, const PanelPlot& plot, const PanelSeries& series) const;
    void paintKey(QPainter& painter, std::size_t panel) const;
    void paintNames(QPainter& painter, std::size_t panel) const;
    const PanelsScene& m_scene;
};

// Filled with `ink`, or with `ground` when hollow; `scale` 1 is the usual size.
void paintShape(QPainter& painter, QPointF at, PanelShape shape, const QColor& ink, const QColor& ground, bool hollow,
                double scale = 1);

}  // namespace steelyard
