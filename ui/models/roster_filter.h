// The roster as the coach asked for it: searched, of one group, sorted by attention or by name.
//
//   filter.setSearch(u"zan");   // finds "Żaneta", whatever the case
//
// Every word of the search must begin a word of the name or stand within it.
#pragma once

#include <QtCore/QSortFilterProxyModel>
#include <QtCore/QString>

namespace steelyard {

// The rule of every search for lifters; an empty search finds everybody.
[[nodiscard]] bool matchesSearch(QStringView text, QStringView search);

enum class RosterOrder { Attention, Name };

class RosterFilter : public QSortFilterProxyModel {
    Q_OBJECT

public:
    explicit RosterFilter(QObject* parent = nullptr);
    void setSearch(const QString& text);
    void setGroup(const QString& group);  // empty: everybody
    void setOrder(RosterOrder order);
    [[nodiscard]] RosterOrder order() const { return m_order; }

protected:
    [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override;
    [[nodiscard]] bool lessThan(const QModelIndex& left, const QModelIndex& right) const override;

private:
    QString m_search;
    QString m_group;
    RosterOrder m_order = RosterOrder::Attention;
};

}  // namespace steelyard
