// A cell of the roster's picture that one of the painters of roster_picture_cells.h fills.
//
//   table->setItemDelegateForColumn(2, new RosterPictureDelegate(paintSessions, table));
#pragma once

#include "ui/pages/week/roster_picture_cells.h"

#include <QtWidgets/QStyledItemDelegate>

#include <functional>

namespace steelyard {

class RosterPictureDelegate final : public QStyledItemDelegate {
    Q_OBJECT

public:
    using CellPainter = std::function<void(QPainter&, const QRect&, const AthleteReview&, const CellInk&)>;

    explicit RosterPictureDelegate(CellPainter cellPainter, QObject* parent = nullptr);
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    CellPainter m_cellPainter;
};

}  // namespace steelyard
