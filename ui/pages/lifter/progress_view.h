// The progress of one lift line: its chart, and beside it the session that is pointed at in words.
#pragma once

#include "ui/pages/lifter/lifter_view.h"

class QLabel;

namespace steelyard {

class ProgressChart;

class ProgressView final : public LifterView {
    Q_OBJECT

public:
    explicit ProgressView(QWidget* parent = nullptr);

    [[nodiscard]] QString action() const override { return QStringLiteral("lifter.progress"); }
    [[nodiscard]] QString title() const override { return tr("Progress"); }
    void show(const ShownLine& shown) override;
    void takeFocus() override;
    void lookAt(int exposure) override;
    [[nodiscard]] ChartTable table() const override;
    [[nodiscard]] QWidget* drawing() const override;

private:
    void showNote(int exposure);

    ShownLine m_shown;
    ProgressChart* m_chart;
    QLabel* m_note;
};

}  // namespace steelyard
