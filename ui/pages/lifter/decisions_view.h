// What the coach decided about this lifter, and what happened in the four weeks after.
#pragma once

#include "ui/pages/lifter/lifter_view.h"

class QLabel;
class QTableView;

namespace steelyard {

class DecisionModel;

class DecisionsView final : public LifterView {
    Q_OBJECT

public:
    explicit DecisionsView(QWidget* parent = nullptr);

    [[nodiscard]] QString action() const override { return QStringLiteral("lifter.decisions"); }
    [[nodiscard]] QString title() const override { return tr("Decisions"); }
    void show(const ShownLine& shown) override;
    void takeFocus() override;
    [[nodiscard]] ChartTable table() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void fitColumns();
    void openLine(int row);

    ShownLine m_shown;
    std::shared_ptr<const LifterReading> m_listed;  // whose decisions the model holds
    DecisionModel* m_model;
    QTableView* m_table;
    QLabel* m_note;
};

}  // namespace steelyard
