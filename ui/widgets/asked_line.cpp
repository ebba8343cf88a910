#include "ui/widgets/asked_line.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QCompleter>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>

namespace steelyard {

AskedLine::AskedLine(QWidget* parent)
    : QWidget(parent), m_label(new QLabel(this)), m_edit(new QLineEdit(this)), m_problem(new QLabel(this))
{
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(14, 2, 14, 4);
    row->addWidget(m_label);
    row->addWidget(m_edit, 2);
    row->addWidget(m_problem, 1);
    m_label->setTextFormat(Qt::PlainText);
    m_label->setBuddy(m_edit);
    m_problem->setTextFormat(Qt::PlainText);
    m_problem->setWordWrap(true);
    m_edit->installEventFilter(this);
    connect(m_edit, &QLineEdit::returnPressed, this, &AskedLine::answer);
    hide();
}

void AskedLine::ask(const Question& question, Answer answer)
{
    m_answer = std::move(answer);
    m_label->setText(question.label);
    m_edit->setAccessibleName(question.label);
    m_problem->setText(tr("Enter keeps it, Escape leaves it."));
    if (question.completer) question.completer->setParent(m_edit);
    m_edit->setCompleter(question.completer);
    m_edit->setText(question.text);
    show();
    m_edit->setFocus(Qt::ShortcutFocusReason);
    m_edit->selectAll();
}

void AskedLine::answer()
{
    const QString problem = m_answer(m_edit->text());
    if (problem.isEmpty())
        leave();
    else
        m_problem->setText(problem);
}

void AskedLine::leave()
{
    hide();
    Q_EMIT left();
}

bool AskedLine::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != m_edit || event->type() != QEvent::KeyPress
        || static_cast<QKeyEvent*>(event)->key() != Qt::Key_Escape)
        return QWidget::eventFilter(watched, event);
    leave();
    return true;
}

}  // namespace steelyard
