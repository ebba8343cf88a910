// The sets of one session on one line, as a table. Load, reps, off, effort and lean can be corrected in place: the model checks
// what was typed and asks for the change; the book answers by a new exposure.
//
//   connect(model, &SetTableModel::changeWanted, this, [&](Id<SetEntry> id, const SetEntry& set) { ... changeSet ... });
//   connect(model, &SetTableModel::refused, line, &QLabel::setText);
#pragma once

#include "core/analysis/athlete_log.h"

#include <QtCore/QAbstractTableModel>

namespace steelyard {

class SetTableModel final : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Number, LoadColumn, Reps, Off, Failed, EffortColumn, LeanColumn, Marks, Kind, Note, ColumnCount };

    using QAbstractTableModel::QAbstractTableModel;
    void setSets(std::vector<LoggedSet> sets, bool editable);
    [[nodiscard]] const LoggedSet* at(int row) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

Q_SIGNALS:
    void changeWanted(steelyard::Id<steelyard::SetEntry> id, const steelyard::SetEntry& set);
    void refused(const QString& why);

private:
    [[nodiscard]] QString text(const SetEntry& set, int column) const;
    [[nodiscard]] QString editText(const SetEntry& set, int column) const;
    // Nothing when the text can't be read.
    [[nodiscard]] std::optional<SetEntry> typed(SetEntry set, int column, const QString& text) const;

    std::vector<LoggedSet> m_sets;
    bool m_editable = false;
};

}  // namespace steelyard
