// Erasing one athlete: every row of theirs, every value that edits replaced, the whole history of edits, and what the file would
// still hold of them. It can't be undone. Others' records stay as they are.
//
//   STEELYARD_TRY(const ErasurePlan plan, planErasure(book.database(), athlete));        // what would go; changes nothing
//   STEELYARD_TRY(const ErasureReport report, eraseAthlete(book, athlete));
//   book.reset();                                                                        // close it, then
//   STEELYARD_TRY(const QStringList left, filesNaming(path, plan.traces));               // empty: nothing found
//
// A mark without a name stays (storage/erased_athlete_repository.h). Backups are other files: copiesHolding() says which of
// them still have the person, and eraseAgain() applies the marks to a book that was restored from one.
// What is gone from this file may still be on the disk: a solid state disk and a file system that keeps older states hold blocks
// that nobody can overwrite from here. So it is "removed from this book", never "destroyed".
// Failures: NotFound, Storage (the book can only be read, the disk failed).
#pragma once

#include "core/book/book.h"
#include "core/storage/athlete_removal.h"
#include "core/storage/erased_athlete_repository.h"

#include <QtCore/QStringList>

namespace steelyard {

// What tells a person in a file's bytes.
struct PersonTraces {
    QString name;
    QUuid uuid;
};

struct ErasurePlan {
    PersonTraces traces;
    QUuid mark;
    std::vector<RowCount> counts;  // by table
    int stepsForgotten = 0;        // of undo and redo, of everybody
    std::vector<NameMention> mentions;
    [[nodiscard]] std::int64_t rows() const;
};

struct ErasureReport {
    ErasedAthlete erased;
    std::vector<RowCount> counts;
    // The rows are gone in any case. False: the file could not be cleaned of what they left yet; `why` says what to do.
    bool fileCleaned = true;
    QString why;
};

[[nodiscard]] Result<ErasurePlan> planErasure(Database&, Id<Athlete>);
[[nodiscard]] Result<ErasureReport> eraseAthlete(Book&, Id<Athlete>);

[[nodiscard]] Result<std::vector<ErasedAthlete>> erasedAthletes(Database&);
// Who has one of these marks goes, and the marks are kept in this book too. Gives how many went.
[[nodiscard]] Result<int> eraseAgain(Book&, const std::vector<ErasedAthlete>&);

enum class CopyState { Free, Holds, CantTell };
struct CopyFinding {
    QString path;
    CopyState state = CopyState::CantTell;
    friend bool operator==(const CopyFinding&, const CopyFinding&) = default;
};
// CantTell: a sealed backup, a damaged or missing file.
[[nodiscard]] std::vector<CopyFinding> copiesHolding(const QStringList& paths, const QUuid& mark);
// Copies that the program itself puts beside a book: before it is brought up to date, before a restore.
[[nodiscard]] QStringList copiesBeside(const QString& bookPath);

// The book's file and its side files, byte by byte. Only while nobody in this process has the book open: closing a plain handle
// on it drops the locks of all the others.
[[nodiscard]] Result<QStringList> filesNaming(const QString& bookPath, const PersonTraces&);

}  // namespace steelyard
