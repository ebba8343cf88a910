// The lifter's lift lines by exercise: a heading row for each exercise, then its lines with their verdict and a sparkline.
#pragma once

#include "ui/pages/lifter/lifter_reading.h"

#include <QtCore/QAbstractListModel>
#include <QtCore/QPointF>
#include <QtWidgets/QStyledItemDelegate>

namespace steelyard {

class LineListModel final : public QAbstractListModel {
    Q_OBJECT

public:
    enum Role { IsHeading = Qt::UserRole + 1, Detail, VerdictText, VerdictValue, Spark, LineIndex };

    using QAbstractListModel::QAbstractListModel;
    void setReading(const LifterReading* reading);             // kept by the caller until the next call
    [[nodiscard]] int rowOf(Id<LiftLine> line) const;          // -1: none
    [[nodiscard]] int lineAt(const QModelIndex& index) const;  // index into log.lines; -1: a heading
    // The next line row below (+1) or above (-1); the same row at the end.
    [[nodiscard]] int step(int row, int by) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

private:
    struct ListRow {
        QString heading;  // empty: a line
        int line = -1;
        QList<QPointF> spark;  // (day, capacity) of comparable sessions, the last ones
    };
    const LifterReading* m_reading = nullptr;
    std::vector<ListRow> m_rows;
};

class LineDelegate final : public QStyledItemDelegate {
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

// "supinated, medium · strict", without what is only "as usual".
[[nodiscard]] QString lineDetail(const LineRecord& line);
[[nodiscard]] QString lineTitle(const LineRecord& line);  // "Arm curl, straight bar"

}  // namespace steelyard
