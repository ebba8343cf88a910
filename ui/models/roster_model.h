// The roster, one row a lifter, with what the latest review says about them. Read-only; the book is changed by edits.
//
//   RosterModel model(book, reviews);
//   model.index(0).data(RosterModel::NameRole)
//
// The order key is taken when restack() is called, not at every review: a lifter whose flags were just answered stays in
// their row until the coach sorts again. Archived lifters are left out.
#pragma once

#include "ui/shell/review_store.h"

#include <QtCore/QAbstractListModel>

namespace steelyard {

struct RosterRow {
    Id<Athlete> athlete;
    QString name;
    QString group;
    double order = 0;  // reviews from this one to the last, when last stacked: the more, the sooner (comesBefore)
    bool reviewed = false;
    std::optional<Severity> worst;  // of the open flags; absent: nothing open
    int openFlags = 0;
    std::array<int, 5> verdicts{};  // lines by Verdict
    std::optional<QDate> lastSession;
    bool finished = false;  // in this round of the review
    friend bool operator==(const RosterRow&, const RosterRow&) = default;
};

class RosterModel : public QAbstractListModel {
    Q_OBJECT

public:
    enum Role { NameRole = Qt::UserRole + 1, GroupRole, OrderRole, RowRole };

    RosterModel(const Book& book, const ReviewStore& reviews, QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;

    [[nodiscard]] const std::vector<RosterRow>& rows() const { return m_rows; }
    [[nodiscard]] const RosterRow& row(const QModelIndex& index) const
    {
        return m_rows.at(static_cast<std::size_t>(index.row()));
    }
    [[nodiscard]] std::optional<int> rowOf(Id<Athlete> athlete) const;
    [[nodiscard]] QStringList groups() const;
    // "2 slipping, 1 stalled": for tooltips and screen readers.
    [[nodiscard]] static QString inWords(const RosterRow& row);

    void readRoster();
    void readReviews();
    void restack();

Q_SIGNALS:
    // The first review has come: now there is a worst lifter.
    void firstStacked();

private:
    void take(std::vector<RosterRow> rows);
    void fill(RosterRow& row) const;
    [[nodiscard]] QString explained(const RosterRow& row) const;

    const Book& m_book;
    const ReviewStore& m_reviews;
    std::vector<RosterRow> m_rows;
    bool m_stacked = false;
};

}  // namespace steelyard

Q_DECLARE_METATYPE(const steelyard::RosterRow*)
