#include "ui/pages/floor/keying_edit.h"

#include "ui/shell/theme.h"

#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>

namespace steelyard {
namespace {

constexpr int kWaveStep = 2;

bool isEnter(const QKeyEvent& key)
{
    return key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter;
}

}  // namespace

KeyingEdit::KeyingEdit(QWidget* parent) : QLineEdit(parent)
{
    setFrame(false);
    setMaxLength(4200);
}

void KeyingEdit::setProblem(const std::optional<NotationProblem>& problem)
{
    m_problem = problem;
    update();
}

// A text field takes many keys with Ctrl for itself; here only those that work on what is being typed.
bool KeyingEdit::isOwnShortcut(const QKeyEvent& key) const
{
    for (const auto standard : {QKeySequence::Copy, QKeySequence::Cut, QKeySequence::Paste, QKeySequence::SelectAll,
                                QKeySequence::MoveToNextWord, QKeySequence::MoveToPreviousWord})
        if (key.matches(standard)) return true;
    if (key.matches(QKeySequence::Undo)) return isUndoAvailable();
    if (key.matches(QKeySequence::Redo)) return isRedoAvailable();
    return !(key.modifiers() & (Qt::ControlModifier | Qt::AltModifier)) && !key.text().isEmpty()
           && key.key() != Qt::Key_Escape;
}

bool KeyingEdit::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        event->setAccepted(isOwnShortcut(*key));
        return event->isAccepted();
    }
    if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Tab) {
        Q_EMIT suggestionTaken();
        return true;
    }
    return QLineEdit::event(event);
}

void KeyingEdit::keyPressEvent(QKeyEvent* event)
{
    if (isEnter(*event)) {
        Q_EMIT entered(event->modifiers() & Qt::ControlModifier ? Watched::Fine : Watched::No);
    } else if (event->key() == Qt::Key_Up || event->key() == Qt::Key_Down) {
        Q_EMIT moved(event->key() == Qt::Key_Up ? -1 : 1);
    } else if (event->key() == Qt::Key_Right && text().isEmpty() && !placeholderText().isEmpty()) {
        insert(placeholderText());
    } else {
        QLineEdit::keyPressEvent(event);
    }
}

void KeyingEdit::focusInEvent(QFocusEvent* event)
{
    QLineEdit::focusInEvent(event);
    if (event->reason() != Qt::ActiveWindowFocusReason && event->reason() != Qt::PopupFocusReason) selectAll();
    Q_EMIT focused();
}

void KeyingEdit::focusOutEvent(QFocusEvent* event)
{
    QLineEdit::focusOutEvent(event);
    const auto reason = event->reason();
    const bool stays =
        reason == Qt::ActiveWindowFocusReason || reason == Qt::PopupFocusReason || reason == Qt::MenuBarFocusReason;
    if (!stays) Q_EMIT leftByFocus();
}

void KeyingEdit::paintEvent(QPaintEvent* event)
{
    QLineEdit::paintEvent(event);
    if (!m_problem) return;
    // The field may be scrolled; its cursor says by how much.
    const auto upTo = [&](qsizetype end) { return fontMetrics().horizontalAdvance(text().left(end)); };
    const int origin = cursorRect().center().x() - upTo(cursorPosition());
    const int from = origin + upTo(m_problem->at);
    const int to = m_problem->length > 0 ? origin + upTo(m_problem->at + m_problem->length)
                                         : from + fontMetrics().horizontalAdvance(u'0');
    QPainter painter(this);
    painter.setPen(QPen(themeColours(palette()).alarm, 1.4));
    painter.setRenderHint(QPainter::Antialiasing);
    const int y = height() - 4;
    QPolygon wave;
    for (int x = from, up = 0; x <= to; x += kWaveStep, up = 2 - up) wave << QPoint(x, y - up);
    painter.drawPolyline(wave);
}

}  // namespace steelyard
