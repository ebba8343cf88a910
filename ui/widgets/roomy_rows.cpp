#include "ui/widgets/roomy_rows.h"

#include <QtWidgets/QAbstractItemView>
#include <QtWidgets/QStyledItemDelegate>

namespace steelyard {
namespace {

class RoomyDelegate final : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        constexpr int kRoom = 6;  // pixels
        return QStyledItemDelegate::sizeHint(option, index) + QSize(0, kRoom);
    }
};

}  // namespace

void giveRowsRoom(QAbstractItemView* view)
{
    view->setItemDelegate(new RoomyDelegate(view));
}

}  // namespace steelyard
