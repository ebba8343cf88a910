// Saves what can be saved from a book that doesn't open, into a new book. The damaged file is only read.
//
//   STEELYARD_TRY(const SalvageReport report, salvageBook(damaged, fresh, progress));
//   for (const QString& line : salvageLines(report)) ...   // what was saved and what was lost, for the coach
//
// The new book is of this program's version, sound, and readable by its owner only; what steps of the history would undo is not kept,
// for they would undo things that may be gone. It is written beside its place and takes it when all is done; there must be no file.
// Failures: NotFound, Invalid (a file stands there), NewerFormat, Storage (nothing of it can be read; no room), Cancelled.
#pragma once

#include "core/base/progress.h"
#include "core/storage/damaged_file.h"

#include <QtCore/QStringList>

#include <vector>

namespace steelyard {

struct SalvageReport {
    std::vector<RescuedTable> tables;  // `rows` are those that are in the new book
    qint64 unreadBytes = 0;            // that the disk didn't give
    bool journalLeftOut = false;
    int standIns = 0;      // lifters, exercises and so on that only stand for lost ones
    QStringList findings;  // what a check of the new book still finds
    [[nodiscard]] std::int64_t saved(const QString& table) const;
    // Something is missing, or stands for something that is.
    [[nodiscard]] bool anythingLost() const;
};

[[nodiscard]] Result<SalvageReport> salvageBook(const QString& damaged, const QString& to, const Progress& progress);

// The file and the journal beside it, byte for byte, readable by their owner only: for a book whose own place can't be written.
// Invalid when there is a file already, Storage when it can't be read or written; then nothing is left at the new place.
[[nodiscard]] Result<void> copyAsItIs(const QString& book, const QString& to);

// One sentence each, most important first.
[[nodiscard]] QStringList salvageLines(const SalvageReport& report);

}  // namespace steelyard
