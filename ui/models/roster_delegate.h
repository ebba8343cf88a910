// Draws one lifter in one line: a shape and a word for how soon, the name, and how many lines slip, stall or can't be read.
#pragma once

#include <QtWidgets/QStyledItemDelegate>

namespace steelyard {

class RosterDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

}  // namespace steelyard
