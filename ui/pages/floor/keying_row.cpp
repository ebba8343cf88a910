#include "ui/pages/floor/keying_row.h"

#include "ui/format/set_words.h"
#include "ui/pages/floor/keying_edit.h"
#include "ui/shell/theme.h"
#include "ui/widgets/elided_label.h"

#include <QtGui/QPainter>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>

namespace steelyard {
namespace {

constexpr int kEditLetters = 26;

QString stateShape(const KeyingRow& row)
{
    if (!row.stored) return {};
    const SetEntry& set = row.stored->set;
    if (!set.watched()) return QStringLiteral("○");
    return *set.off == 0 ? QStringLiteral("●") : QStringLiteral("◐");
}

QColor toneColour(KeyingRowWidget::Tone tone, const QPalette& palette)
{
    const ThemeColours& colours = themeColours(palette);
    switch (tone) {
    case KeyingRowWidget::Tone::Quiet:
        return colours.quiet;
    case KeyingRowWidget::Tone::Plain:
        return colours.text;
    case KeyingRowWidget::Tone::Ask:
        return colours.warm;
    case KeyingRowWidget::Tone::Wrong:
        return colours.alarm;
    }
    return colours.text;
}

}  // namespace

KeyingRowWidget::KeyingRowWidget(QWidget* parent)
    : QWidget(parent),
      m_number(new QLabel(this)),
      m_state(new QLabel(this)),
      m_edit(new KeyingEdit(this)),
      m_words(new ElidedLabel(this))
{
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(10, 1, 8, 1);
    row->setSpacing(8);
    m_number->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    m_number->setFixedWidth(fontMetrics().horizontalAdvance(QStringLiteral("000")));
    m_state->setFixedWidth(fontMetrics().horizontalAdvance(QStringLiteral("◐ ")));
    m_edit->setFixedWidth(fontMetrics().averageCharWidth() * kEditLetters);
    row->addWidget(m_number);
    row->addWidget(m_state);
    row->addWidget(m_edit);
    row->addWidget(m_words, 1);
    connect(m_edit, &QLineEdit::textChanged, this, &KeyingRowWidget::showState);
}

void KeyingRowWidget::show(const KeyingRow& row, const QString& line, const QString& name)
{
    const bool draft = hasDraft();
    m_row = row;
    m_line = line;
    m_number->setText(QString::number(row.number));
    m_edit->setAccessibleName(tr("%1, set %2").arg(name, QString::number(row.number)));
    m_edit->setPlaceholderText(row.stored ? QString() : line);
    if (!draft || m_edit->text() == line) {
        m_edit->setText(row.stored ? line : QString());
        if (m_edit->hasFocus()) m_edit->selectAll();
    }
    if (!hasDraft()) say(row.stored ? setWords(row.stored->set, SetWords::Whole) : QString(), Tone::Quiet);
    showState();
}

void KeyingRowWidget::say(const QString& words, Tone tone)
{
    QPalette colours = m_words->palette();
    colours.setColor(QPalette::WindowText, toneColour(tone, palette()));
    m_words->setPalette(colours);
    m_words->setText(words);
}

void KeyingRowWidget::setCurrent(bool current)
{
    m_current = current;
    // What the keys do is said where they do it.
    if (!current && !m_row.stored && !hasDraft()) say({}, Tone::Quiet);
    update();
}

void KeyingRowWidget::setReadOnly(bool readOnly)
{
    m_edit->setReadOnly(readOnly);
}

void KeyingRowWidget::dropDraft()
{
    m_edit->setText(m_row.stored ? m_line : QString());
    m_edit->setProblem({});
    m_edit->selectAll();
}

bool KeyingRowWidget::hasDraft() const
{
    const QString typed = m_edit->text().trimmed();
    return m_row.stored ? typed != m_line : !typed.isEmpty();
}

void KeyingRowWidget::showState()
{
    m_state->setText(hasDraft() ? QStringLiteral("✎") : stateShape(m_row));
    m_state->setToolTip(hasDraft() ? tr("Typed, and not in the book yet") : QString());
}

void KeyingRowWidget::paintEvent(QPaintEvent* event)
{
    Q_UNUSED(event)
    const ThemeColours& colours = themeColours(palette());
    QPainter painter(this);
    painter.fillRect(0, height() - 1, width(), 1, colours.hairline);
    if (!m_current) return;
    painter.fillRect(0, 0, 3, height(), colours.accent);
    painter.setPen(colours.accent);
    painter.drawRect(m_edit->geometry().adjusted(-2, -1, 1, 0));
}

}  // namespace steelyard
