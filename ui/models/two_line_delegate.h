// A cell with a second, quieter line below the first: what the first means, or how sure it is. Both lines are cut with an
// ellipsis where the column ends; the model's tool tip says the whole.
//
//   table->setItemDelegate(new TwoLineDelegate(LinesModel::DetailRole, table));
#pragma once

#include <QtWidgets/QStyledItemDelegate>

namespace steelyard {

class TwoLineDelegate final : public QStyledItemDelegate {
    Q_OBJECT

public:
    explicit TwoLineDelegate(int detailRole, QObject* parent = nullptr);

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    int m_detailRole;
};

}  // namespace steelyard
