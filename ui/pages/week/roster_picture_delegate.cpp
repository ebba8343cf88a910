#include "ui/pages/week/roster_picture_delegate.h"

#include "ui/pages/week/roster_picture_model.h"

#include <QtGui/QPainter>

namespace steelyard {

RosterPictureDelegate::RosterPictureDelegate(CellPainter cellPainter, QObject* parent)
    : QStyledItemDelegate(parent), m_cellPainter(std::move(cellPainter))
{}

void RosterPictureDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    QStyledItemDelegate::paint(painter, option, index);  // ground, selection and focus; these cells have no text
    const auto* review = index.data(RosterPictureModel::ReviewRole).value<const AthleteReview*>();
    if (!review) return;
    painter->save();
    painter->setClipRect(option.rect, Qt::IntersectClip);
    m_cellPainter(*painter, option.rect.adjusted(4, 0, -2, 0), *review,
                  cellInk(option.font, option.palette, option.state.testFlag(QStyle::State_Selected)));
    painter->restore();
}

}  // namespace steelyard
