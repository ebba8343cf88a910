// One training day as a list: a slot a row, each part of its dose in a column of its own, typed in place. The last row is the empty line to add a
// lift. setData() stores nothing: it says what was typed.
#pragma once

#include "ui/pages/block/block_shown.h"

#include <QtCore/QAbstractTableModel>

namespace steelyard {

class BlockDayModel final : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Lift, Sets, Reps, Reserve, LoadColumn, Rest, GoesOn, Turns, Note, ColumnCount };

    using QAbstractTableModel::QAbstractTableModel;
    void setShown(BlockShownPtr shown, QDate date);
    [[nodiscard]] const BlockShown* shown() const { return m_shown.get(); }
    [[nodiscard]] QDate date() const { return m_date; }
    [[nodiscard]] std::optional<PlanPlace> placeOf(int row) const;
    // The slot as it would be; nullopt: it can't be read.
    [[nodiscard]] std::optional<Slot> typedSlot(const QModelIndex& index, const QString& text) const;
    // What to type in this column.
    [[nodiscard]] static QString hint(int column);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

Q_SIGNALS:
    void typed(steelyard::PlanPlace place, steelyard::Slot slot);
    void typingSaid(const QString& problem);

private:
    [[nodiscard]] const Slot* slotOf(int row) const;
    [[nodiscard]] QString text(const Slot& slot, int column) const;
    [[nodiscard]] QString editText(const Slot& slot, int column) const;

    BlockShownPtr m_shown;
    QDate m_date;
};

}  // namespace steelyard
