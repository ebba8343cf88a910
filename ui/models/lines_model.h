// The lift lines of one lifter as a table: what names the line, the verdict in a word, and its numbers with their
// uncertainty. One column table holds title, alignment, both lines of text and sort value; a new column is one row of it.
#pragma once

#include "core/flags/athlete_review.h"

#include <QtCore/QAbstractTableModel>

namespace steelyard {

class LinesModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Role { SortRole = Qt::UserRole + 1, PointsRole, DetailRole };

    using QAbstractTableModel::QAbstractTableModel;

    void setLines(std::vector<LineReview> lines, MassUnit unit);
    [[nodiscard]] const std::vector<LineReview>& lines() const { return m_lines; }
    [[nodiscard]] MassUnit unit() const { return m_unit; }
    [[nodiscard]] std::optional<int> rowOf(Id<LiftLine> line) const;
    [[nodiscard]] static int nameColumn();
    [[nodiscard]] static int sparklineColumn();

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    std::vector<LineReview> m_lines;
    MassUnit m_unit = MassUnit::kg;
};

}  // namespace steelyard

Q_DECLARE_METATYPE(const std::vector<steelyard::ReadingPoint>*)
