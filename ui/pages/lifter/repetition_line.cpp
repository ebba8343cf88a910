#include "ui/pages/lifter/repetition_line.h"

#include "ui/pages/lifter/set_words.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {

RepetitionLine::RepetitionLine(QWidget* parent) : QWidget(parent)
{
    m_edit = new QLineEdit(this);
    m_edit->setAccessibleName(tr("Repetitions one by one"));
    auto* label = new QLabel(tr("Re&petitions:"), this);
    label->setBuddy(m_edit);
    auto* legend =
        new QLabel(tr("Centimetres or a point, ^1 lifted, /3 lowered, b t s d l a marks, + failed; 3* for three alike. "
                      "Enter records, Escape leaves."),
                   this);
    legend->setWordWrap(true);
    legend->setForegroundRole(QPalette::PlaceholderText);
    m_reading = new QLabel(this);
    m_reading->setTextFormat(Qt::PlainText);
    m_reading->setWordWrap(true);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->addWidget(label);
    all->addWidget(m_edit);
    all->addWidget(m_reading);
    all->addWidget(legend);
    setFocusProxy(m_edit);
    connect(m_edit, &QLineEdit::textEdited, this, &RepetitionLine::look);
    connect(m_edit, &QLineEdit::returnPressed, this, &RepetitionLine::take);
}

void RepetitionLine::open(std::span<const Repetition> known, const SetEntry& set, const RepetitionLineContext& context)
{
    m_context = context;
    m_edit->setText(known.empty() ? emptyRepetitionLine(set) : writeRepetitionLine(known));
    m_edit->selectAll();
    look();
}

QString RepetitionLine::reading() const
{
    return m_reading->text();
}

void RepetitionLine::look()
{
    const auto read = readRepetitionLine(m_edit->text(), m_context);
    if (!read) return m_reading->setText(tr("At character %1: %2").arg(read.error().at + 1).arg(read.error().text));
    const SetEntry said = withRepetitions({}, *read);
    QString words = tr("%n repetition(s)", nullptr, said.reps);
    if (const int off = said.off.value_or(0); off > 0)
        words += tr(", %1 off standard (%2)").arg(QString::number(off), marksWords(said.marks));
    if (said.failed) words += tr(", one more failed part-way");
    if (said.loweringSeconds) words += tr(", usually lowered in %1 s").arg(said.loweringSeconds->toString());
    m_reading->setText(words + u'.');
}

void RepetitionLine::take()
{
    const auto read = readRepetitionLine(m_edit->text(), m_context);
    if (read) return Q_EMIT entered(*read);
    m_edit->setSelection(static_cast<int>(read.error().at), static_cast<int>(read.error().length));
}

bool RepetitionLine::event(QEvent* event)
{
    // Escape leaves the line, not the view.
    if (event->type() == QEvent::ShortcutOverride && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void RepetitionLine::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape) return Q_EMIT left();
    QWidget::keyPressEvent(event);
}

}  // namespace steelyard
