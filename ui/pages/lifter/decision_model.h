// The coach's decisions about one lifter with what followed each, newest first. One column table holds title, hint, text and
// the quieter second line.
//
//   model->setOutcomes(decisionOutcomes(log, readings, today), log);
#pragma once

#include "core/analysis/decision_outcomes.h"
#include "ui/charts/chart_table.h"

#include <QtCore/QAbstractTableModel>

namespace steelyard {

class DecisionModel final : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Role { DetailRole = Qt::UserRole + 1 };

    using QAbstractTableModel::QAbstractTableModel;
    // `log` is kept by the caller until the next call.
    void setOutcomes(std::vector<DecisionOutcome> outcomes, const AthleteLog* log);
    [[nodiscard]] const DecisionOutcome* at(int row) const;  // nullptr: no such row
    [[nodiscard]] ChartTable table() const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    std::vector<DecisionOutcome> m_outcomes;
    const AthleteLog* m_log = nullptr;
};

}  // namespace steelyard
