// The rows of a chart's data as a read-only table.
#pragma once

#include "ui/charts/chart_table.h"

#include <QtCore/QAbstractTableModel>

namespace steelyard {

class ChartTableModel final : public QAbstractTableModel {
    Q_OBJECT

public:
    using QAbstractTableModel::QAbstractTableModel;
    void setTable(ChartTable table);
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    ChartTable m_table;
};

}  // namespace steelyard
