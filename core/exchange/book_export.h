// Writes a whole book, or one athlete's whole record, into a folder: logbook.csv (sets and ratings), book.json (everything
// else, see book_json.h) and README.txt (what the files are); of one athlete also record.html, which they can read themselves.
//
//   STEELYARD_TRY(const auto report, exportBook(book->database(), dir, std::nullopt, progress));
//   STEELYARD_TRY(const auto report, exportBook(book->database(), dir, athleteId, progress));
//
// All come from one snapshot. With `only`, no file says anything of another athlete. The folder is made when its
// parent exists. Of what is in the folder only files with these names are replaced, each as a whole, and none before all
// are written. Failures: NotFound, Invalid (no such folder, a file in the way), Storage, Cancelled.
#pragma once

#include "core/base/progress.h"
#include "core/domain/athlete.h"
#include "core/storage/database.h"

#include <QtCore/QStringList>

namespace steelyard {

struct ExportReport {
    QStringList files;  // paths
    std::int64_t athletes = 0;
    std::int64_t sets = 0;
};

[[nodiscard]] Result<ExportReport> exportBook(Database&, const QString& dir, std::optional<Id<Athlete>> only,
                                              const Progress&);

}  // namespace steelyard
