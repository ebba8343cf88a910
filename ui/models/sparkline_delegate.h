// Draws the last sessions of a lift line as one small multiple: a filled point was watched and to the standard, a hollow
// one nobody watched, a cross was off standard. No axis; the numbers stand beside it.
#pragma once

#include <QtWidgets/QStyledItemDelegate>

namespace steelyard {

class SparklineDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

}  // namespace steelyard
