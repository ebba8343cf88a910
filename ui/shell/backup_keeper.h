// Keeps the backups of the opened book: one a day while it is in use, one before what can't simply be undone, each brought along to a
// second folder of the coach's choice when that is there.
//
//   keeper.keepIfDue();                                                     // whenever nothing else is running
//   keeper.keep(BackupReason::Bulk, this, [this](const Result<Backup>&) { apply(); });
//   status->setNote(keeper.trouble(), keeper.troubleDetail());              // empty when all is well
//
// All of it in the background. What doesn't work is never in the way: it is said until it works again, and tried again every minute.
// The second folder is kept in the settings, by the book's place; nothing about lifters is.
#pragma once

#include "core/care/backup_shelf.h"
#include "ui/jobs/job.h"

#include <QtCore/QTimer>

class QSettings;

namespace steelyard {

class Book;

class BackupKeeper final : public QObject {
    Q_OBJECT

public:
    struct Options {
        QString folder;
        QSettings* settings = nullptr;
        bool daily = true;
    };
    using Kept = std::function<void(const Result<Backup>&)>;

    BackupKeeper(Book& book, JobRunner& jobs, const Clock& clock, const Options& options, QObject* parent = nullptr);

    [[nodiscard]] const BackupShelf& shelf() const { return m_shelf; }
    void keepIfDue();
    // `then` comes whether or not it worked, unless `owner` died.
    void keep(BackupReason reason, QObject* owner, Kept then);
    // A worker kept one itself, or could not.
    void took(const Result<Backup>& made);

    [[nodiscard]] QString secondFolder() const;  // as it was chosen; empty: none
    // Empty: none any more.
    [[nodiscard]] Result<void> chooseSecond(const QString& folder);
    void tryAgain();

    [[nodiscard]] QString trouble() const;  // a few words
    [[nodiscard]] QString troubleDetail() const;
    [[nodiscard]] bool isBusy() const { return m_keeping.isRunning() || m_bringing.isRunning(); }

Q_SIGNALS:
    void shelfChanged();
    void troubleChanged();

private:
    void bringAlong();
    void showTrouble();
    [[nodiscard]] QString settingsKey() const;

    Book& m_book;
    JobRunner& m_jobs;
    const Clock& m_clock;
    Options m_options;
    BackupShelf m_shelf;
    QDate m_tried;  // the day that was looked after
    JobHandle m_keeping;
    JobHandle m_bringing;
    std::optional<Error> m_first;
    std::optional<Error> m_second;
    QTimer m_again;
};

// Before what can't simply be taken back. Without a keeper, at once.
void keepFirst(BackupKeeper* keeper, BackupReason reason, QObject* owner, std::function<void()> then);

}  // namespace steelyard
