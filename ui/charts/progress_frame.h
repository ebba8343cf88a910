// What stands around and over the lines of a progress chart: grid, ticks, words, blocks, decisions (ProgressFrame, below
// the lines), and the sessions' marks with the one that is looked at (ProgressMarks, above them).
#pragma once

#include "ui/charts/chart_panel.h"

#include <QtGui/QFont>
#include <QtWidgets/QGraphicsItem>

namespace steelyard {

// Shared by the items; owned by the view.
struct ProgressScene {
    ProgressSpec spec;
    ChartColours colours;
    QFont font;
    QFont small;
    QLocale locale;
    QRectF bounds;
    double stripTop = 0;     // of the blocks
    double datesTop = 0;     // of the date labels
    double decisionTop = 0;  // of the decisions
    const ChartPanel* capacity = nullptr;
    const ChartPanel* reps = nullptr;
    int selected = -1;  // exposure
    int hovered = -1;
};

class ProgressFrame final : public QGraphicsItem {
public:
    explicit ProgressFrame(const ProgressScene& scene) : m_scene(scene) { setZValue(-10); }
    void boundsChange() { prepareGeometryChange(); }
    [[nodiscard]] QRectF boundingRect() const override { return m_scene.bounds; }
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    void paintPanel(QPainter& painter, const ChartPanel& panel, const PanelSpec& spec) const;
    void paintDates(QPainter& painter) const;
    void paintBlocks(QPainter& painter) const;
    void paintDecisions(QPainter& painter) const;
    const ProgressScene& m_scene;
};

class ProgressMarks final : public QGraphicsItem {
public:
    explicit ProgressMarks(const ProgressScene& scene) : m_scene(scene) { setZValue(10); }
    void boundsChange() { prepareGeometryChange(); }
    [[nodiscard]] QRectF boundingRect() const override { return m_scene.bounds; }
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    void paintPointed(QPainter& painter, int exposure, bool selected) const;
    void paintBeyond(QPainter& painter, const ChartPanel& panel, const ChartPoint& point) const;
    void paintLoads(QPainter& painter) const;
    void paintNext(QPainter& painter) const;
    void paintKey(QPainter& painter) const;
    void paintNextKey(QPainter& painter) const;
    // One shape with its word, leftwards from `right`; gives what is left, or `right` when there is no room.
    template <class Paint>
    double paintKeyItem(QPainter& painter, const ChartPanel& panel, const QString& title, double right,
                        const QString& word, double shapeWidth, const Paint& paintShape) const;
    const ProgressScene& m_scene;
};

}  // namespace steelyard
