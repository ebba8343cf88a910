// The sets that carried a verdict as a table, newest session first; a session of several sets has a row that says what
// they did together. One column table holds title, hint, alignment and text; a new column is one row of it.
//
//   model->setExplanation(explainLineOf(lifter, line));
//   model->exposureAt(0)     // of the newest session, index into the record's exposures
#pragma once

#include "core/analysis/line_explanation.h"

#include <QtCore/QAbstractTableModel>

namespace steelyard {

class WhyModel final : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { DateColumn, SetColumn, HeardColumn, ExpectedColumn, ReachedColumn, CountedColumn, SpeaksColumn };

    using QAbstractTableModel::QAbstractTableModel;
    void setExplanation(LineExplanation explanation);
    [[nodiscard]] const LineExplanation& explanation() const { return m_explanation; }
    [[nodiscard]] int exposureAt(int row) const;          // -1: no such row
    [[nodiscard]] bool isTogether(int row) const;         // a session's sum
    [[nodiscard]] int rowOfExposure(int exposure) const;  // its first row; -1: none

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    struct TableRow {
        std::size_t session = 0;
        int set = -1;  // -1: the session's sum
        bool dated = false;
    };
    [[nodiscard]] QString text(const TableRow& row, int column) const;

    LineExplanation m_explanation;
    std::vector<TableRow> m_rows;
};

}  // namespace steelyard
