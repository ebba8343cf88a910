// What the views of panels share: the chart, below it in words what the cursor stands on and what holds for all of it, and in
// place of everything a sentence when there is nothing to draw.
#pragma once

#include "ui/charts/panels_spec.h"
#include "ui/pages/lifter/lifter_view.h"

class QBoxLayout;
class QLabel;
class QStackedWidget;

namespace steelyard {

class PanelsChart;

class PanelsView : public LifterView {
    Q_OBJECT

public:
    void takeFocus() override;
    void lookAt(int exposure) override;
    [[nodiscard]] ChartTable table() const override;
    [[nodiscard]] QWidget* drawing() const override;

protected:
    PanelsView(const QString& chartName, QWidget* parent);
    // `otherwise`: said when the spec is empty.
    void showSpec(PanelsSpec spec, const QString& otherwise);
    void say(const QString& text);  // in place of the chart
    void setFootnote(const QString& text);
    [[nodiscard]] PanelsChart& chart() const { return *m_chart; }
    // Left of the chart.
    void addBeside(QWidget* widget);
    [[nodiscard]] static PanelsOptions optionsFor(const ShownLine& shown);

private:
    void showNote(int stop);

    PanelsChart* m_chart;
    QLabel* m_note;
    QLabel* m_footnote;
    QLabel* m_instead;
    QStackedWidget* m_states;
    QBoxLayout* m_row = nullptr;
};

}  // namespace steelyard
