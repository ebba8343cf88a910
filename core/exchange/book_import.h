// Reads what exportBook() wrote into a new book, so that the book has the same content: all or nothing, one transaction.
//
//   STEELYARD_CHECK(importExport(*book, dir, progress));
//
// The book must have no athletes; its library, gyms and settings are replaced by those of the export. A row of the logbook
// that can't be read refuses the whole. What can be undone before can't be undone afterwards.
// Failures: NotFound (a file is missing), Invalid (with the place in the file), NewerFormat, Storage, Cancelled.
#pragma once

#include "core/base/progress.h"
#include "core/book/book.h"

#include <functional>

namespace steelyard {

using LogbookFiller = std::function<Result<void>(Transaction&, const QString& csvPath, const Progress&)>;

[[nodiscard]] Result<void> importExport(Book&, const QString& dir, const Progress& progress);
// With another reader of logbook.csv, inside the same transaction: what the writer gets wrong, its own reader may not see.
[[nodiscard]] Result<void> importExport(Book&, const QString& dir, const LogbookFiller& fillLogbook, const Progress&);

}  // namespace steelyard
