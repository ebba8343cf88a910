#include "ui/charts/chart_table_model.h"

namespace steelyard {

void ChartTableModel::setTable(ChartTable table)
{
    beginResetModel();
    m_table = std::move(table);
    endResetModel();
}

int ChartTableModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_table.rows.size());
}

int ChartTableModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_table.header.size());
}

QVariant ChartTableModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) return {};
    if (role == Qt::DisplayRole) return m_table.rows[static_cast<std::size_t>(index.row())].value(index.column());
    if (role != Qt::TextAlignmentRole) return {};
    // Words to the left, numbers to the right.
    const bool words = index.column() < 2 || index.column() == 3;
    return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter) | (words ? Qt::AlignLeft : Qt::AlignRight));
}

QVariant ChartTableModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation == Qt::Horizontal && role == Qt::DisplayRole) return m_table.header.value(section);
    return {};
}

}  // namespace steelyard
