#include "ui/pages/block/beside_week.h"

#include "ui/shell/theme.h"
#include "ui/widgets/words.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QLabel>

namespace steelyard {

BesideWeek::BesideWeek(const UiContext& context, QWidget* parent)
    : QWidget(parent), m_context(context), m_words(plainWords(this))
{}

BesideWeek::~BesideWeek()
{
    m_job.cancel();
}

QString BesideWeek::words() const
{
    return m_words->text();
}

void BesideWeek::say(const QString& text, bool isProblem)
{
    QPalette colours = m_words->palette();
    colours.setColor(QPalette::WindowText,
                     isProblem ? themeColours(palette()).alarm : palette().color(QPalette::WindowText));
    m_words->setPalette(colours);
    m_words->setText(text);
}

void BesideWeek::dropAnswer()
{
    m_job.cancel();
    ++m_asked;
}

bool BesideWeek::event(QEvent* event)
{
    // Escape leaves this, not the page.
    if (event->type() == QEvent::ShortcutOverride && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void BesideWeek::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        return goOn(event->modifiers().testFlag(Qt::ControlModifier));
    if (event->key() == Qt::Key_Escape) return Q_EMIT left({});
    QWidget::keyPressEvent(event);
}

}  // namespace steelyard
