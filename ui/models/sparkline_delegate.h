// Draws the last sessions of a lift line as one small multiple: see spark_painter.h.
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
