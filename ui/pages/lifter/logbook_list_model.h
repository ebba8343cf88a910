// The days of a logbook that a search has found, as a list: the day, and below it what there is to know at a glance; what was
// done, and below it each exercise's best set in words.
//
//   model->setDays(log, days);   model->setShown(indices);
#pragma once

#include "ui/pages/lifter/logbook_days.h"

#include <QtCore/QAbstractTableModel>

namespace steelyard {

class LogbookListModel final : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Day, Done, ColumnCount };
    enum Role { DetailRole = Qt::UserRole + 1 };

    using QAbstractTableModel::QAbstractTableModel;
    // Both are kept by the caller until the next call. `shown` are indices of `days`.
    void setDays(const AthleteLog* log, const std::vector<LogbookDay>* days, std::vector<std::size_t> shown);
    [[nodiscard]] QDate dateAt(int row) const;  // invalid: no such row
    [[nodiscard]] int rowOf(QDate date) const;  // -1: not among them

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] const LogbookDay* at(int row) const;

    const AthleteLog* m_log = nullptr;
    const std::vector<LogbookDay>* m_days = nullptr;
    std::vector<std::size_t> m_shown;
};

// "12 sets, deload, discomfort 4": of a day, in words.
[[nodiscard]] QString dayHints(const LogbookDay& day);

}  // namespace steelyard
