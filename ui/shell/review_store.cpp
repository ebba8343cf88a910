#include "ui/shell/review_store.h"

#include "ui/format/format.h"

#include <algorithm>

namespace steelyard {

ReviewStore::ReviewStore(Book& book, const Clock& clock, JobRunner& jobs, Reviewer reviewer, QObject* parent)
    : QObject(parent), m_book(book), m_clock(clock), m_jobs(jobs), m_reviewer(std::move(reviewer))
{
    m_subscription = m_book.hub().subscribe([this](const Changes& changes) {
        if (changes.roster || changes.library || changes.settings)
            refreshAll();
        else
            refresh(changes.athletes);
    });
}

const AthleteReview* ReviewStore::find(Id<Athlete> athlete) const
{
    const auto at = std::ranges::find(m_reviews, athlete, &AthleteReview::athlete);
    return at == m_reviews.end() ? nullptr : &*at;
}

void ReviewStore::refreshAll()
{
    m_wantAll = true;
    start();
}

void ReviewStore::refresh(const std::set<Id<Athlete>>& athletes)
{
    m_wanted.insert(athletes.begin(), athletes.end());
    start();
}

// One review at a time: what is asked for meanwhile waits, and is asked in one go afterwards.
void ReviewStore::start()
{
    if (m_job.isRunning() || (!m_wantAll && m_wanted.empty())) return;
    const bool all = std::exchange(m_wantAll, false) || !m_ready;
    const std::set<Id<Athlete>> asked = std::exchange(m_wanted, {});
    RosterReviewRequest request{m_book.path(), asOf(), {}, format::wording()};
    if (!all) {
        request.only.assign(asked.begin(), asked.end());
        request.kept = m_kept;
    }
    m_job = m_jobs.run(
        this, tr("Reading the records"),
        [reviewer = m_reviewer, request](const Progress& progress) { return reviewer(request, progress); },
        [this, all, asked](Result<std::vector<AthleteReview>> fresh) {
            if (!fresh) {
                Q_EMIT reviewFailed(fresh.error());
            } else if (all) {
                m_reviews.clear();
                m_ready = true;
                take(std::move(*fresh), {});
            } else {
                take(std::move(*fresh), asked);
            }
            start();
        });
}

void ReviewStore::take(std::vector<AthleteReview> fresh, const std::set<Id<Athlete>>& asked)
{
    std::erase_if(m_reviews, [&](const AthleteReview& review) { return asked.contains(review.athlete); });
    std::ranges::move(fresh, std::back_inserter(m_reviews));
    std::ranges::stable_sort(m_reviews, comesBefore);
    Q_EMIT reviewsChanged();
}

}  // namespace steelyard
