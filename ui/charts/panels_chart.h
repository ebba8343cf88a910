// Draws a PanelsSpec and lets it be asked: the mouse points at a stop, the keys step through stops and lines.
//
//   auto* chart = new PanelsChart(tr("Training by week"), view);
//   chart->setSpec(spec);
//   connect(chart, &PanelsChart::pointedAt, this, &View::showNote);
//
// Keys: Left/Right, Home/End: stops; Up/Down or [ and ]: lines (lineStepped). A stop is an index into the spec's; -1 is none.
// The accessible description carries the summary and what there is to say of the selected stop.
#pragma once

#include "ui/charts/panels_paint.h"

#include <QtWidgets/QGraphicsView>

namespace steelyard {

class PanelsChart final : public QGraphicsView {
    Q_OBJECT

public:
    explicit PanelsChart(const QString& name, QWidget* parent = nullptr);
    ~PanelsChart() override;

    void setSpec(PanelsSpec spec);
    [[nodiscard]] const PanelsSpec& spec() const { return m_shared->spec; }
    // Ignored when the spec has no such stop.
    void select(int stop);
    [[nodiscard]] int selected() const { return m_shared->selected; }
    [[nodiscard]] int stopOf(int exposure) const;  // -1: none
    // The stop nearest to a place on the widget; -1: there are none.
    [[nodiscard]] int nearest(QPointF position) const;
    // Where a value of a panel stands on the widget.
    [[nodiscard]] QPointF place(std::size_t panel, double x, double y) const
    {
        return m_shared->plots[panel]->at(x, y);
    }
    [[nodiscard]] QSize sizeHint() const override { return {760, 420}; }

Q_SIGNALS:
    void selectedStop(int stop);  // by key or click
    void pointedAt(int stop);     // under the mouse, else the selected one
    void lineStepped(int by);     // +1 next, -1 previous

protected:
    void resizeEvent(QResizeEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    void layOut();
    void layOutColumn(int column, double left, double width);
    void restyle();
    void refill();
    void stepTo(int stop);
    void hover(int stop);
    void describe();
    [[nodiscard]] double widestTick(int column) const;
    [[nodiscard]] double widestName() const;

    std::unique_ptr<PanelsScene> m_shared;
    PanelsFrame* m_frame;
    PanelsMarks* m_marks;
};

}  // namespace steelyard
