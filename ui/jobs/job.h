// Work off the window's thread.
//
//   m_job = jobs.run(this, tr("Importing"),
//                    [text](const Progress& progress) { return importAll(text, progress); },   // worker thread
//                    [this](Result<ImportReport> report) { show(report); });                   // this thread, later
//   m_job.cancel();
//
// The work must be self-contained: values in, a Result out, its own database connection. It is asked to stop when
// cancel() is called, when the owner dies, and when the runner dies (which then waits for it). `done` is never called
// after the owner died. A cancelled job still reports: its work answers with Cancelled.
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"

#include <QtCore/QObject>
#include <QtCore/QPointer>
#include <QtCore/QThreadPool>
#include <QtCore/QTimer>

#include <atomic>
#include <memory>
#include <vector>

namespace steelyard {

struct JobState {
    QString title;
    std::stop_source stop;
    std::atomic<double> share{0};
    std::atomic<bool> running{true};
};

class JobHandle {
public:
    JobHandle() = default;  // no job
    explicit JobHandle(std::shared_ptr<JobState> state) : m_state(std::move(state)) {}
    [[nodiscard]] bool isRunning() const { return m_state && m_state->running; }
    [[nodiscard]] double share() const { return m_state ? m_state->share.load() : 0; }
    [[nodiscard]] QString title() const { return m_state ? m_state->title : QString(); }
    void cancel() const
    {
        if (m_state) m_state->stop.request_stop();
    }

private:
    std::shared_ptr<JobState> m_state;
};

class JobRunner : public QObject {
    Q_OBJECT

public:
    explicit JobRunner(QObject* parent = nullptr);
    ~JobRunner() override;

    template <class Work, class Done>
    JobHandle run(QObject* owner, const QString& title, Work work, Done done)
    {
        using Answer = std::invoke_result_t<Work, const Progress&>;
        auto answer = std::make_shared<std::optional<Answer>>();
        return start(
            owner, title,
            [answer, work = std::move(work)](const Progress& progress) mutable { answer->emplace(work(progress)); },
            [answer, done = std::move(done)]() mutable { done(std::move(**answer)); });
    }

    // Oldest first.
    [[nodiscard]] std::vector<JobHandle> running() const;

Q_SIGNALS:
    // A job began, went on, or ended; at most about ten times a second.
    void changed();

private:
    JobHandle start(QObject* owner, const QString& title, std::function<void(const Progress&)> work,
                    std::function<void()> done);

    QThreadPool m_pool;
    QTimer m_tick;
    std::vector<std::shared_ptr<JobState>> m_jobs;
};

// At once, or as soon as the last job has ended; unless `owner` died.
void whenNothingRuns(JobRunner& jobs, QObject* owner, const std::function<void()>& then);

}  // namespace steelyard
