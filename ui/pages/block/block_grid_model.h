// A week as a table: a column for each of its seven days, a row for each slot, and one empty line below the longest day.
//
// Days without training are columns too, empty and narrow, so that something can be put there. The words of a cell are those that a screen reader
// says; the delegate draws the parts.
#pragma once

#include "ui/pages/block/block_shown.h"

#include <QtCore/QAbstractTableModel>

namespace steelyard {

class BlockGridModel final : public QAbstractTableModel {
    Q_OBJECT

public:
    using QAbstractTableModel::QAbstractTableModel;
    static constexpr int kDays = kDaysOfPlanWeek;

    void setShown(BlockShownPtr shown);
    [[nodiscard]] const BlockShown* shown() const { return m_shown.get(); }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

    [[nodiscard]] QDate dateOf(int column) const;
    // Absent on a rest day.
    [[nodiscard]] std::optional<std::size_t> dayOf(int column) const;
    [[nodiscard]] std::optional<PlanPlace> placeOf(const QModelIndex& index) const;
    [[nodiscard]] const Slot* slotOf(const QModelIndex& index) const;
    [[nodiscard]] QModelIndex indexOf(QDate date, std::size_t slot) const;
    // Broken at this very slot.
    [[nodiscard]] std::vector<const BrokenLimit*> limitsOf(const PlanPlace& place) const;
    [[nodiscard]] std::vector<const BrokenLimit*> limitsOfDay(std::size_t day) const;
    [[nodiscard]] QString done(const QModelIndex& index) const;

private:
    [[nodiscard]] QString headerText(int column) const;
    [[nodiscard]] QString headerToolTip(int column) const;
    [[nodiscard]] QString cellWords(const QModelIndex& index) const;
    [[nodiscard]] QString cellToolTip(const QModelIndex& index) const;

    BlockShownPtr m_shown;
};

}  // namespace steelyard
