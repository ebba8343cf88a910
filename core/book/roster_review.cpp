#include "core/book/roster_review.h"

#include "core/analysis/regime_engine.h"
#include "core/book/reading_numbers.h"
#include "core/flags/reading_thresholds.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/library_repository.h"
#include "core/storage/rule_setting_repository.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <atomic>
#include <mutex>
#include <thread>

namespace steelyard {
namespace {

struct RosterReviewText {
    Q_DECLARE_TR_FUNCTIONS(RosterReviewText)
};

constexpr std::size_t kMostThreads = 8;

// What all threads read and none changes.
struct RosterWork {
    QString bookPath;
    QDate asOf;
    std::vector<Id<Athlete>> athletes;
    Library library;
    RuleSettings settings;
    ReadingParameters parameters;
    Wording wording;
    std::shared_ptr<KeptReadings> kept;
};

Result<RosterWork> prepareRoster(const RosterReviewRequest& request)
{
    STEELYARD_TRY(const auto db, Database::openReader(request.bookPath));
    RosterWork work{request.bookPath, request.asOf, request.only, {}, {}, {}, request.wording, request.kept};
    STEELYARD_TRY(work.library, LibraryRepository(*db).read());
    STEELYARD_TRY(work.settings, RuleSettingRepository(*db).all());
    STEELYARD_TRY(work.parameters, readReadingParameters(*db, request.asOf));
    if (!work.athletes.empty()) return work;
    STEELYARD_TRY(const auto everybody, AthleteRepository(*db).all());
    for (const Row<Athlete>& row : everybody)
        if (!row.value.archived) work.athletes.push_back(row.id);
    return work;
}

// Threads take the next athlete until none is left, one has failed, or the caller asks to stop. Every result goes to its
// own place, so the outcome doesn't depend on who took which.
class RosterCrew {
public:
    RosterCrew(const RosterWork& work, const Progress& progress) : m_work(work), m_progress(progress)
    {
        m_reviews.resize(work.athletes.size());
    }

    void run()
    {
        const std::size_t cores = std::max(1u, std::thread::hardware_concurrency());
        const std::size_t count = std::min({cores, kMostThreads, std::max<std::size_t>(1, m_work.athletes.size())});
        std::vector<std::jthread> threads;
        threads.reserve(count);
        for (std::size_t i = 0; i < count; ++i) threads.emplace_back([this] { takeTurns(); });
    }

    Result<std::vector<AthleteReview>> take()
    {
        if (m_failure) return fail(std::move(*m_failure));
        if (m_progress.cancelled()) return fail(ErrorCode::Cancelled, RosterReviewText::tr("The review was stopped."));
        std::vector<AthleteReview> reviews;
        reviews.reserve(m_reviews.size());
        for (auto& review : m_reviews) reviews.push_back(std::move(*review));
        return reviews;
    }

private:
    void takeTurns()
    {
        auto db = Database::openReader(m_work.bookPath);
        if (!db) return giveUp(std::move(db).error());
        const RegimeEngine engine(m_work.parameters, readingThresholds(m_work.settings), m_work.wording);
        while (!m_stopped && !m_progress.cancelled()) {
            const std::size_t place = m_next.fetch_add(1);
            if (place >= m_work.athletes.size()) return;
            auto log = readAthleteLog(**db, m_work.library, m_work.athletes[place], m_work.asOf);
            if (!log) return giveUp(std::move(log).error());
            m_reviews[place] =
                m_work.kept ? m_work.kept->review(*log, m_work.parameters, m_work.settings, m_work.asOf, m_work.wording)
                            : reviewAthlete(*log, engine, m_work.settings, m_work.asOf, m_work.wording);
            tellProgress();
        }
    }

    void tellProgress()
    {
        const std::lock_guard lock(m_mutex);  // so that the share only ever grows
        ++m_done;
        m_progress.report(static_cast<double>(m_done) / static_cast<double>(m_reviews.size()));
    }

    void giveUp(Error error)
    {
        const std::lock_guard lock(m_mutex);
        m_stopped = true;
        if (!m_failure) m_failure = std::move(error);
    }

    const RosterWork& m_work;
    const Progress& m_progress;
    std::vector<std::optional<AthleteReview>> m_reviews;
    std::atomic<std::size_t> m_next = 0;
    std::atomic<bool> m_stopped = false;
    std::mutex m_mutex;
    std::size_t m_done = 0;
    std::optional<Error> m_failure;
};

}  // namespace

Result<std::vector<AthleteReview>> reviewRoster(const RosterReviewRequest& request, const Progress& progress)
{
    STEELYARD_TRY(const RosterWork work, prepareRoster(request));
    RosterCrew crew(work, progress);
    crew.run();
    STEELYARD_TRY(auto reviews, crew.take());
    std::ranges::sort(reviews, comesBefore);
    return reviews;
}

}  // namespace steelyard
