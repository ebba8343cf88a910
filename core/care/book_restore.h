// A book out of a backup, in two steps: getting it ready beside the book, which takes its time and changes nothing, and putting it
// in the book's place, which takes none.
//
//   STEELYARD_TRY(const Rehearsal seen, rehearseRestore({.book = book, .from = file}, clock, progress));   // a look, thrown away
//   STEELYARD_TRY(const StagedBook staged, stageRestore({.book = book, .from = file}, clock, progress));
//   ... close the book
//   STEELYARD_TRY(const RestoredBook done, finishRestore(staged, shelf, clock));
//
// `from` is a backup, any copy of a book, or a sealed file (sealed_file.h), then with its passphrase. A checksum that stands beside it
// must fit. What comes out has today's form and is checked whole (verify.h); one with findings is refused. Whoever was erased is
// erased again in it: by the marks of the present book, and of its shelf (erased_list.h); where no book was yet, by those of all books
// of this computer, unless nobody would be left: then it is a record that was handed over. The present book is backed up first, then set aside whole ("….before-restore-<utc>"); if it is too damaged to be
// backed up, setting it aside is all. However the program ends meanwhile, the next opening finds the one or the other, whole.
// Failures: NotFound, Storage, Invalid (checksum, passphrase, findings), NewerFormat, Conflict (somebody has the book open), Cancelled.
#pragma once

#include "core/care/backup_shelf.h"
#include "core/care/book_content.h"
#include "core/care/passphrase.h"

#include <memory>

namespace steelyard {

struct RestoreWish {
    QString book;
    QString from;
    std::shared_ptr<const Passphrase> passphrase = {};
};

struct Rehearsal {
    BookContent content;
    std::optional<BookLoss> loss;  // unknown where the present book is missing or can't be read
    QStringList findings;          // of verify; it can't be restored when there are any
};

// A file beside the book that is removed when nobody finishes.
class StagedBook {
public:
    StagedBook(QString book, QString path) : m_book(std::move(book)), m_path(std::move(path)) {}
    StagedBook(StagedBook&& other) noexcept;
    StagedBook& operator=(StagedBook&& other) noexcept;
    ~StagedBook();
    [[nodiscard]] const QString& book() const { return m_book; }
    [[nodiscard]] const QString& path() const { return m_path; }

    Rehearsal seen;

private:
    QString m_book;
    QString m_path;
};

struct RestoredBook {
    std::optional<Backup> kept;  // of the book as it was; nothing when it was missing or couldn't be read
    QString setAside;            // empty when there was none
};

[[nodiscard]] Result<Rehearsal> rehearseRestore(const RestoreWish& wish, const Clock& clock, const Progress& progress);
[[nodiscard]] Result<StagedBook> stageRestore(const RestoreWish& wish, const Clock& clock, const Progress& progress);
// Nobody in this process has the book open.
[[nodiscard]] Result<RestoredBook> finishRestore(const StagedBook& staged, const BackupShelf& shelf,
                                                 const Clock& clock);

}  // namespace steelyard
