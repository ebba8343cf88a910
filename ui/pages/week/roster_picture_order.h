// The rows of the roster's picture as the coach asked for them: filtered, and sorted by one column; among equals, who asks most
// for attention comes first.
#pragma once

#include "ui/pages/week/roster_picture_filter.h"

#include <QtCore/QSortFilterProxyModel>

namespace steelyard {

class RosterPictureOrder final : public QSortFilterProxyModel {
    Q_OBJECT

public:
    explicit RosterPictureOrder(QObject* parent = nullptr);
    void setFilter(const PictureFilter& filter);

protected:
    [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override;
    [[nodiscard]] bool lessThan(const QModelIndex& left, const QModelIndex& right) const override;

private:
    PictureFilter m_filter;
};

}  // namespace steelyard
