// Draws a slot in a day's column: the exercise, the way it is done, the dose, what was done; before the name a mark of what is fixed, beside it what breaks a limit there, as a
// shape and a word; at the edge a bracket that holds a superset together. Types the dose in place, on one line (keying/slot_notation.h):
// Enter keeps what can be read, what cannot stays in the line with the place selected, Escape leaves it.
#pragma once

#include "core/keying/slot_notation.h"
#include "ui/pages/block/block_grid_model.h"

#include <QtWidgets/QStyledItemDelegate>

class QLineEdit;

namespace steelyard {

class BlockSlotDelegate final : public QStyledItemDelegate {
    Q_OBJECT

public:
    BlockSlotDelegate(const BlockGridModel& model, QObject* parent);
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                                        const QModelIndex& index) const override;
    void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                              const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;
    void destroyEditor(QWidget* editor, const QModelIndex& index) const override;

    // How many lines a slot takes: one more where something was done.
    void setLines(int lines) { m_lines = lines; }

Q_SIGNALS:
    void typed(steelyard::PlanPlace place, steelyard::Slot slot) const;
    void typingSaid(const QString& problem) const;
    void ended() const;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    [[nodiscard]] bool keepsReading(QLineEdit& line) const;
    [[nodiscard]] DoseReading read(const QString& line, const QModelIndex& index) const;

    const BlockGridModel& m_model;
    int m_lines = 3;
    mutable QPersistentModelIndex m_typed;
};

}  // namespace steelyard
