#include "ui/pages/week/roster_picture_order.h"

#include "ui/pages/week/roster_picture_model.h"

namespace steelyard {

RosterPictureOrder::RosterPictureOrder(QObject* parent) : QSortFilterProxyModel(parent)
{
    setSortRole(RosterPictureModel::SortRole);
    setSortLocaleAware(true);
}

void RosterPictureOrder::setFilter(const PictureFilter& filter)
{
    m_filter = filter;
    invalidateFilter();
}

bool RosterPictureOrder::filterAcceptsRow(int row, const QModelIndex& parent) const
{
    const QModelIndex index = sourceModel()->index(row, 0, parent);
    const auto* review = index.data(RosterPictureModel::ReviewRole).value<const AthleteReview*>();
    return review && m_filter.accepts(*review);
}

bool RosterPictureOrder::lessThan(const QModelIndex& left, const QModelIndex& right) const
{
    if (QSortFilterProxyModel::lessThan(left, right)) return true;
    if (QSortFilterProxyModel::lessThan(right, left)) return false;
    // Rows stand worst first; turned round, those who are equal still do.
    return sortOrder() == Qt::AscendingOrder ? left.row() < right.row() : left.row() > right.row();
}

}  // namespace steelyard
