// The latest review of the roster, kept up to date in the background: whole at first, then only the athletes that a commit
// touched. Pages read it and listen; none of them computes one.
//
//   connect(&context.reviews, &ReviewStore::reviewsChanged, this, &WeekPage::refresh);
//   if (const AthleteReview* review = context.reviews.find(athlete)) ...
//
// Pointers and references are valid until the next reviewsChanged(). As of the day of the Clock it was given.
#pragma once

#include "core/book/book.h"
#include "core/book/roster_review.h"
#include "ui/jobs/job.h"

#include <QtCore/QObject>

namespace steelyard {

class ReviewStore : public QObject {
    Q_OBJECT

public:
    // How a review is made: core's reviewRoster, or a prepared one in tests. Called from a worker thread.
    using Reviewer = std::function<Result<std::vector<AthleteReview>>(const RosterReviewRequest&, const Progress&)>;

    ReviewStore(Book& book, const Clock& clock, JobRunner& jobs, Reviewer reviewer, QObject* parent = nullptr);

    // Worst first, then by name. Empty until isReady().
    [[nodiscard]] const std::vector<AthleteReview>& reviews() const { return m_reviews; }
    [[nodiscard]] const AthleteReview* find(Id<Athlete> athlete) const;
    // The first whole review has come.
    [[nodiscard]] bool isReady() const { return m_ready; }
    // A review is being made now.
    [[nodiscard]] bool isBusy() const { return m_job.isRunning(); }
    [[nodiscard]] QDate asOf() const { return m_clock.today(); }

    void refreshAll();
    void refresh(const std::set<Id<Athlete>>& athletes);

Q_SIGNALS:
    void reviewsChanged();
    void reviewFailed(const steelyard::Error& error);

private:
    void start();
    void take(std::vector<AthleteReview> fresh, const std::set<Id<Athlete>>& asked);

    Book& m_book;
    const Clock& m_clock;
    JobRunner& m_jobs;
    Reviewer m_reviewer;
    std::vector<AthleteReview> m_reviews;
    bool m_ready = false;
    bool m_wantAll = false;
    std::set<Id<Athlete>> m_wanted;
    std::shared_ptr<KeptReadings> m_kept = std::make_shared<KeptReadings>();  // of those whose sets are being typed
    JobHandle m_job;
    ChangeHub::Subscription m_subscription;
};

}  // namespace steelyard
