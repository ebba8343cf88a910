// Draws a PanelsSpec and lets it be asked: the mouse points at a stop, the keys step through stops and lines.
//
//   auto* chart = new PanelsChart(tr("Training by week"), view);
//   chart->setSpec(spec);
//   connect(chart, &PanelsChart::pointedAt, this, &View::showNote);
//
// Its places (chart_view.h) are stops: indices into the spec's.
// The accessible description carries the summary and what there is to say of the selected stop.
#pragma once

#include "ui/charts/panels_paint.h"

namespace steelyard {

class PanelsChart final : public ChartView {
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
    [[nodiscard]] int nearest(QPointF position) const override;
    // Where a value of a panel stands on the widget.
    [[nodiscard]] QPointF place(std::size_t panel, double x, double y) const
    {
        return m_shared->plots[panel]->at(x, y);
    }

Q_SIGNALS:
    void selectedStop(int stop);  // by key or click

protected:
    void mousePressEvent(QMouseEvent* event) override;

private:
    ChartSelection& selection() override { return *m_shared; }
    [[nodiscard]] int stepCount() const override { return static_cast<int>(m_shared->spec.stops.size()); }
    [[nodiscard]] int selectedStep() const override { return m_shared->selected; }
    void selectStep(int step) override { select(step); }
    void layOut() override;
    void restyle() override;
    void layOutColumn(int column, double left, double width);
    void refill();
    void describe();
    [[nodiscard]] double widestTick(int column) const;
    [[nodiscard]] double widestName() const;

    std::unique_ptr<PanelsScene> m_shared;
    PanelsFrame* m_frame;
    PanelsMarks* m_marks;
};

}  // namespace steelyard
