// The picture of the roster: one row a lifter, in the order of the reviews (worst first). One table of columns holds title,
// explanation, words and sort value of each; a new column is one row of it.
//
//   RosterPictureModel model(context.reviews);
//   model.index(0, 1).data(RosterPictureModel::ReviewRole).value<const AthleteReview*>()
//
// Sort values ascend from what asks most for a look. Rows mirror the store: call readReviews() after every change of it.
#pragma once

#include "ui/charts/chart_table.h"
#include "ui/shell/review_store.h"

#include <QtCore/QAbstractTableModel>

namespace steelyard {

enum class PictureColumn { Lifter, Attention, Lines, Sets, Discomfort, Sessions };

class RosterPictureModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Role { SortRole = Qt::UserRole + 1, DetailRole, ReviewRole, WordsRole };

    explicit RosterPictureModel(const ReviewStore& reviews, QObject* parent = nullptr);

    void readReviews();
    [[nodiscard]] const AthleteReview* review(int row) const;
    [[nodiscard]] std::optional<int> rowOf(Id<Athlete> athlete) const;
    [[nodiscard]] static QString columnTitle(int column);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    const ReviewStore& m_reviews;
    int m_count = 0;
};

// As rows of words, in the order and choice of `shown`, which is the model or a proxy of it.
[[nodiscard]] ChartTable pictureTable(const QAbstractItemModel& shown);

}  // namespace steelyard

Q_DECLARE_METATYPE(const steelyard::AthleteReview*)
