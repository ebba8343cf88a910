#include "ui/shell/status_line.h"

#include "ui/format/format.h"
#include "ui/shell/theme.h"
#include "ui/format/people.h"

#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>

namespace steelyard {

StatusLine::StatusLine(JobRunner& jobs, QWidget* parent)
    : QWidget(parent),
      m_jobs(jobs),
      m_text(new QLabel(this)),
      m_note(new QLabel(this)),
      m_initials(new QLabel(tr("Names as initials   Ctrl+Shift+I"), this)),
      m_job(new QLabel(this)),
      m_stop(new QPushButton(tr("Stop   Ctrl+."), this))
{
    m_text->setTextFormat(Qt::PlainText);
    m_text->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    m_note->setTextFormat(Qt::PlainText);
    m_note->hide();
    m_job->setTextFormat(Qt::PlainText);
    m_initials->setTextFormat(Qt::PlainText);
    m_initials->setObjectName(QStringLiteral("initialsShown"));
    m_initials->hide();
    m_stop->setFocusPolicy(Qt::TabFocus);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(10, 2, 10, 2);
    layout->addWidget(m_text, 1);
    layout->addWidget(m_note);
    layout->addSpacing(16);
    layout->addWidget(m_initials);
    layout->addWidget(m_job);
    layout->addWidget(m_stop);
    setFixedHeight(fontMetrics().height() * 9 / 5);
    connect(&m_jobs, &JobRunner::changed, this, &StatusLine::showJobs);
    connect(m_stop, &QPushButton::clicked, this, &StatusLine::stopRunning);
    showJobs();
}

void StatusLine::say(const QString& text)
{
    m_text->setText(format::people(text));
}

void StatusLine::showInitials(bool initials)
{
    m_initials->setVisible(initials);
    m_text->setText(format::people(m_text->text()));
}

void StatusLine::setNote(const QString& text, const QString& detail)
{
    m_note->setText(text);
    m_note->setToolTip(format::plainToolTip(detail));
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, themeColours(colours).warm);
    m_note->setPalette(colours);
    m_note->setVisible(!text.isEmpty());
}

QString StatusLine::note() const
{
    return m_note->text();
}

void StatusLine::stopRunning()
{
    for (const JobHandle& job : m_jobs.running()) job.cancel();
}

void StatusLine::showJobs()
{
    const auto running = m_jobs.running();
    m_job->setVisible(!running.empty());
    m_stop->setVisible(!running.empty());
    if (running.empty()) return;
    const JobHandle& oldest = running.front();
    m_job->setText(oldest.share() > 0 ? tr("%1, %2").arg(oldest.title(), format::percent(oldest.share()))
                                      : tr("%1…").arg(oldest.title()));
}

}  // namespace steelyard
