// Draws a ProgressSpec and lets it be asked: the mouse points at a session, the keys step through sessions and lines.
//
//   auto* chart = new ProgressChart(page);
//   chart->setSpec(spec);
//   connect(chart, &ProgressChart::pointedAt, note, &SessionNote::show);
//
// Its places (chart_view.h) are sessions: indices into the reading's points. Keys beside the common ones: + and - zoom around
// the selected session, Ctrl+Left/Right pan, 0 shows all; Enter goes on to the session's sets. The wheel with Ctrl zooms around
// the mouse, dragging pans, a double click goes on to the sets. The widget's
// accessible description carries the summary and what stands at the session that is selected.
#pragma once

#include "ui/charts/progress_frame.h"

#include <memory>

namespace steelyard {

class ProgressChart final : public ChartView {
    Q_OBJECT

public:
    explicit ProgressChart(QWidget* parent = nullptr);
    ~ProgressChart() override;

    void setSpec(ProgressSpec spec);
    [[nodiscard]] const ProgressSpec& spec() const { return m_shared->spec; }
    // Ignored when the spec has no such session.
    void select(int exposure);
    [[nodiscard]] int selected() const { return m_shared->selected; }
    // The session nearest to a place on the widget, within reach; else -1.
    [[nodiscard]] int nearest(QPointF position) const override;
    // Where a session's point stands on the widget, in the lower panel.
    [[nodiscard]] QPointF place(int exposure) const;
    // The stretch of time in sight.
    [[nodiscard]] const TimeWindow& window() const { return m_shared->window; }
    // What the session's points say in words, a line each; empty for -1.
    [[nodiscard]] QStringList readout(int exposure) const;
    // What the ruler says at a place on the widget; empty: nothing.
    [[nodiscard]] QString tipAt(QPointF position) const;

Q_SIGNALS:
    void selectedSession(int exposure);  // by key or click
    void setsWanted(int exposure);       // on to the session's sets

protected:
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    bool viewportEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    ChartSelection& selection() override { return *m_shared; }
    [[nodiscard]] int stepCount() const override { return static_cast<int>(m_shared->spec.reps.points.size()); }
    [[nodiscard]] int selectedStep() const override;
    void selectStep(int step) override;
    void layOut() override;
    void restyle() override;
    void applyWindow();
    void zoom(double factor, double around);
    void pan(double days);
    [[nodiscard]] bool moveInTime(const QKeyEvent& event);
    [[nodiscard]] double dayAt(double x) const;
    void describe();

    std::unique_ptr<ProgressScene> m_shared;
    std::unique_ptr<ChartPanel> m_capacity;
    std::unique_ptr<ChartPanel> m_reps;
    ProgressFrame* m_frame;
    ProgressMarks* m_marks;
    // Of a drag: where it was last; absent while no button is down.
    std::optional<QPointF> m_pressed;
    bool m_dragging = false;
};

}  // namespace steelyard
