#include "ui/pages/floor/sheet_field.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QApplication>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>

namespace steelyard {

SheetField::SheetField(QWidget* parent) : QFrame(parent), m_line(new QLineEdit(this)), m_message(new QLabel(this))
{
    constexpr int kLetters = 18;
    setFrameShape(QFrame::StyledPanel);
    auto* row = new QHBoxLayout(this);
    auto* label = new QLabel(tr("Number of the &sheet:"), this);
    label->setBuddy(m_line);
    m_line->setObjectName(QStringLiteral("sheetNumber"));
    m_line->setAccessibleName(tr("Number of the sheet"));
    m_line->setPlaceholderText(tr("scan or type it"));
    m_line->setFixedWidth(kLetters * fontMetrics().averageCharWidth() + kLetters);
    m_message->setTextFormat(Qt::PlainText);
    m_message->setWordWrap(true);
    row->addWidget(label);
    row->addWidget(m_line);
    row->addWidget(m_message, 1);
    connect(m_line, &QLineEdit::returnPressed, this, &SheetField::take);
    hide();
}

void SheetField::ask(std::function<Result<void>(const QString&)> taken)
{
    m_taken = std::move(taken);
    if (!isVisible()) m_before = QApplication::focusWidget();
    m_message->setText(tr("Enter opens its keying, Esc goes back."));
    m_line->clear();
    show();
    m_line->setFocus(Qt::ShortcutFocusReason);
}

QString SheetField::message() const
{
    return m_message->text();
}

bool SheetField::goBack()
{
    if (!isVisible()) return false;
    hide();
    if (m_before) m_before->setFocus();
    return true;
}

void SheetField::keyPressEvent(QKeyEvent* event)
{
    if (event->key() != Qt::Key_Escape || !goBack()) QFrame::keyPressEvent(event);
}

void SheetField::take()
{
    const auto done = m_taken(m_line->text());
    if (done) return hide();
    m_message->setText(done.error().what);
    m_line->selectAll();
}

}  // namespace steelyard
