// The folder in which the backups of one book stand, newest first, as many as the calendar asks for (backup.h).
//
//   const BackupShelf shelf(BackupShelf::usualFolder(book.path()), clock);
//   STEELYARD_TRY(const Backup made, shelf.keep(book.database(), BackupReason::Import));
//   STEELYARD_TRY(const auto good, shelf.newestGood({}));
//
// A backup is written under another name, checked as a database, put on the disk with its checksum, and only then has its name; so
// whatever stands in the list was whole once. Then those that nobody needs go, never the newest. Copies that bringing a book up to
// date left beside it move onto the shelf. Files are the owner's alone (0600, folders 0700).
// Several programs may use one shelf. Any thread; the Database belongs to the calling one.
// Failures: Storage (disk), NotFound (a second folder that isn't there), Invalid (a backup was changed), Conflict (another program
// is at it), Cancelled.
#pragma once

#include "core/base/clock.h"
#include "core/base/progress.h"
#include "core/care/backup.h"
#include "core/storage/database.h"

namespace steelyard {

class BackupShelf {
public:
    BackupShelf(QString folder, const Clock& clock) : m_folder(std::move(folder)), m_clock(&clock) {}

    // Beside the program's data, one folder for each book, by where the book stands.
    [[nodiscard]] static QString usualFolder(const QString& book);
    // Its name inside a folder that the coach chose: a stick may hold those of several books.
    [[nodiscard]] static QString folderIn(const QString& chosen, const QString& book);

    [[nodiscard]] const QString& folder() const { return m_folder; }
    // Nothing kept yet is an empty list.
    [[nodiscard]] std::vector<Backup> list() const;
    // Whether the newest is of another day than today.
    [[nodiscard]] bool isDue() const;

    [[nodiscard]] Result<Backup> keep(Database& book, BackupReason reason) const;
    // What stands beside the backup says it is as it was. Doesn't look inside; see book_rehearsal.h.
    [[nodiscard]] Result<void> check(const Backup& backup, const Progress& progress) const;
    [[nodiscard]] Result<std::optional<Backup>> newestGood(const Progress& progress) const;

    // For a second folder: made once, when the coach chooses it; afterwards its absence means that the stick isn't there.
    [[nodiscard]] Result<void> make() const;
    // Brings the newest good backup of another shelf, if it isn't here. One that stands here and was changed is set aside and said.
    [[nodiscard]] Result<void> bringFrom(const BackupShelf& other, const Progress& progress) const;

private:
    [[nodiscard]] Result<Backup> put(const QString& unfinished, const QString& path) const;
    [[nodiscard]] Result<void> bring(const Backup& good, qint64 newestHere, const Progress& progress) const;
    [[nodiscard]] Result<void> takeIn(const QString& copy) const;
    [[nodiscard]] Result<void> takeInCopiesOf(const QString& book) const;
    [[nodiscard]] Result<void> setAsideIfChanged(const Backup& backup, const Progress& progress) const;
    void sweep() const;
    void prune() const;
    [[nodiscard]] QString nextName(const QDateTime& madeAt, BackupReason reason) const;

    QString m_folder;
    const Clock* m_clock;
};

}  // namespace steelyard
