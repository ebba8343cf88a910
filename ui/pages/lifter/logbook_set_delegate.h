// Types a row of a session in place. Enter keeps what can be read; what cannot stays in the line, with the place that is wrong
// selected. Escape leaves the row as it was.
#pragma once

#include "ui/pages/lifter/logbook_set_model.h"

#include <QtWidgets/QStyledItemDelegate>

namespace steelyard {

class LogbookSetDelegate final : public QStyledItemDelegate {
    Q_OBJECT

public:
    LogbookSetDelegate(LogbookSetModel& model, QObject* parent);
    [[nodiscard]] QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                                        const QModelIndex& index) const override;
    void destroyEditor(QWidget* editor, const QModelIndex& index) const override;
    [[nodiscard]] bool isEditing() const { return m_row >= 0; }

Q_SIGNALS:
    void ended() const;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;

private:
    LogbookSetModel& m_model;
    mutable int m_row = -1;  // that is being typed
};

}  // namespace steelyard
