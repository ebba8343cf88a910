#include "ui/pages/lifter/logbook_set_delegate.h"

#include "ui/shell/theme.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QLineEdit>

namespace steelyard {

LogbookSetDelegate::LogbookSetDelegate(LogbookSetModel& model, QObject* parent)
    : QStyledItemDelegate(parent), m_model(model)
{}

QWidget* LogbookSetDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&, const QModelIndex& index) const
{
    auto* line = new QLineEdit(parent);
    line->setFrame(false);
    line->setAccessibleName(tr("The set on one line"));
    m_row = index.row();
    connect(line, &QLineEdit::textEdited, &m_model,
            [&model = m_model, row = m_row](const QString& text) { model.setDraft(row, text); });
    return line;
}

void LogbookSetDelegate::destroyEditor(QWidget* editor, const QModelIndex& index) const
{
    m_row = -1;
    m_model.clearDraft();
    QStyledItemDelegate::destroyEditor(editor, index);
    Q_EMIT ended();
}

bool LogbookSetDelegate::eventFilter(QObject* watched, QEvent* event)
{
    auto* line = qobject_cast<QLineEdit*>(watched);
    if (line && event->type() == QEvent::KeyPress && m_row >= 0) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        const bool keeps = key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Tab;
        if (const auto problem = keeps ? m_model.problemOf(m_row, line->text()) : std::nullopt) {
            m_model.setDraft(m_row, line->text());
            line->setSelection(static_cast<int>(problem->at), static_cast<int>(problem->length));
            if (problem->length == 0) line->setCursorPosition(static_cast<int>(problem->at));
            return true;
        }
    }
    return QStyledItemDelegate::eventFilter(watched, event);
}

// What is wrong with the line being typed is said in the words beside it, in the colour of a warning.
void LogbookSetDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const
{
    QStyledItemDelegate::initStyleOption(option, index);
    if (m_row != index.row() || index.column() != LogbookSetModel::Words || !m_model.isDraftWrong()) return;
    option->palette.setColor(QPalette::Text, themeColours(option->palette).alarm);
    option->state &= ~QStyle::State_Selected;
    option->backgroundBrush = option->palette.base();  // the colour of a selected row would swallow it
}

}  // namespace steelyard
