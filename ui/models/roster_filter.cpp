#include "ui/models/roster_filter.h"

#include "core/base/text.h"
#include "ui/models/roster_model.h"

#include <algorithm>

namespace steelyard {

bool matchesSearch(QStringView text, QStringView search)
{
    const QStringList words = searchKey(search).split(u' ', Qt::SkipEmptyParts);
    return std::ranges::all_of(words, [key = searchKey(text)](const QString& word) { return key.contains(word); });
}

RosterFilter::RosterFilter(QObject* parent) : QSortFilterProxyModel(parent)
{
    setDynamicSortFilter(true);
    sort(0);
}

void RosterFilter::setSearch(const QString& text)
{
    m_search = text;
    invalidateFilter();
}

void RosterFilter::setGroup(const QString& group)
{
    m_group = group;
    invalidateFilter();
}

void RosterFilter::setOrder(RosterOrder order)
{
    m_order = order;
    invalidate();
}

bool RosterFilter::filterAcceptsRow(int row, const QModelIndex& parent) const
{
    const QModelIndex index = sourceModel()->index(row, 0, parent);
    if (!m_group.isEmpty() && index.data(RosterModel::GroupRole).toString() != m_group) return false;
    return matchesSearch(index.data(RosterModel::NameRole).toString(), m_search);
}

bool RosterFilter::lessThan(const QModelIndex& left, const QModelIndex& right) const
{
    if (m_order == RosterOrder::Attention) {
        const double a = left.data(RosterModel::OrderRole).toDouble();
        const double b = right.data(RosterModel::OrderRole).toDouble();
        if (a != b) return a > b;
    }
    return left.data(RosterModel::NameRole).toString().localeAwareCompare(right.data(RosterModel::NameRole).toString())
           < 0;
}

}  // namespace steelyard
