#include "ui/widgets/checked_line_delegate.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QLineEdit>

namespace steelyard {

CheckedLineDelegate::CheckedLineDelegate(Check check, QObject* parent)
    : QStyledItemDelegate(parent), m_check(std::move(check))
{}

QWidget* CheckedLineDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                                           const QModelIndex& index) const
{
    Q_UNUSED(option)
    auto* line = new QLineEdit(parent);
    line->setFrame(false);
    line->setAccessibleName(index.model()->headerData(index.column(), Qt::Horizontal).toString());
    m_typed = index;
    connect(line, &QLineEdit::textEdited, this, [this](const QString& text) { Q_EMIT said(m_check(m_typed, text)); });
    return line;
}

void CheckedLineDelegate::destroyEditor(QWidget* editor, const QModelIndex& index) const
{
    m_typed = QPersistentModelIndex();
    QStyledItemDelegate::destroyEditor(editor, index);
    Q_EMIT ended();
}

bool CheckedLineDelegate::eventFilter(QObject* watched, QEvent* event)
{
    auto* line = qobject_cast<QLineEdit*>(watched);
    if (line && event->type() == QEvent::KeyPress && m_typed.isValid()) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        const bool keeps = key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Tab;
        if (const QString problem = keeps ? m_check(m_typed, line->text()) : QString(); !problem.isEmpty()) {
            Q_EMIT said(problem);
            line->selectAll();
            return true;
        }
    }
    return QStyledItemDelegate::eventFilter(watched, event);
}

}  // namespace steelyard
