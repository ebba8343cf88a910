#include "ui/jobs/job.h"

namespace steelyard {

JobRunner::JobRunner(QObject* parent) : QObject(parent)
{
    m_tick.setInterval(100);
    connect(&m_tick, &QTimer::timeout, this, &JobRunner::changed);
}

JobRunner::~JobRunner()
{
    for (const auto& job : m_jobs) job->stop.request_stop();
    m_pool.waitForDone();
}

std::vector<JobHandle> JobRunner::running() const
{
    std::vector<JobHandle> handles;
    handles.reserve(m_jobs.size());
    for (const auto& job : m_jobs) handles.emplace_back(job);
    return handles;
}

JobHandle JobRunner::start(QObject* owner, const QString& title, std::function<void(const Progress&)> work,
                           std::function<void()> done)
{
    auto job = std::make_shared<JobState>();
    job->title = title;
    m_jobs.push_back(job);
    connect(owner, &QObject::destroyed, this, [weak = std::weak_ptr(job)] {
        if (const auto state = weak.lock()) state->stop.request_stop();
    });
    const auto finish = [this, job, guard = QPointer<QObject>(owner), done = std::move(done)] {
        std::erase(m_jobs, job);
        job->running = false;
        if (m_jobs.empty()) m_tick.stop();
        Q_EMIT changed();
        if (guard) done();
    };
    m_pool.start([this, job, work = std::move(work), finish] {
        work(Progress([job](double share) { job->share = share; }, job->stop.get_token()));
        QMetaObject::invokeMethod(this, finish, Qt::QueuedConnection);
    });
    if (!m_tick.isActive()) m_tick.start();
    Q_EMIT changed();
    return JobHandle(job);
}

void whenNothingRuns(JobRunner& jobs, QObject* owner, const std::function<void()>& then)
{
    if (jobs.running().empty()) return then();
    QObject::connect(
        &jobs, &JobRunner::changed, owner, [&jobs, owner, then] { whenNothingRuns(jobs, owner, then); },
        Qt::SingleShotConnection);
}

}  // namespace steelyard
