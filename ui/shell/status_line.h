// The quiet line at the foot: whether what was typed is kept, and what is running, with how far and a way to stop it.
#pragma once

#include "ui/jobs/job.h"

#include <QtWidgets/QWidget>

class QLabel;
class QPushButton;

namespace steelyard {

class StatusLine : public QWidget {
    Q_OBJECT

public:
    explicit StatusLine(JobRunner& jobs, QWidget* parent = nullptr);
    void say(const QString& text);
    // What stays to be said, whatever else is: empty when all is well.
    void setNote(const QString& text, const QString& detail);
    [[nodiscard]] QString note() const;
    // Says all the time that lifters are called by their initials.
    void showInitials(bool initials);
    void stopRunning();

private:
    void showJobs();

    JobRunner& m_jobs;
    QLabel* m_text;
    QLabel* m_note;
    QLabel* m_initials;
    QLabel* m_job;
    QPushButton* m_stop;
};

}  // namespace steelyard
