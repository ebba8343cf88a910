// Reads what exportBook() wrote into a new book, so that the book has the same content: all or nothing, one transaction.
//
//   STEELYARD_CHECK(importExport(*book, dir, fillLogbook, progress));
//
// The book must have no athletes; its library, gyms and settings are replaced by those of the export. The sets are read by
// the function that is handed in, inside the same transaction. What can be undone before can't be undone afterwards.
// Failures: NotFound (a file is missing), Invalid (with the place in the file), NewerFormat, Storage, Cancelled.
#pragma once

#include "core/base/progress.h"
#include "core/book/book.h"

#include <functional>

namespace steelyard {

using LogbookFiller = std::function<Result<void>(Transaction&, const QString& csvPath, const Progress&)>;

[[nodiscard]] Result<void> importExport(Book&, const QString& dir, const LogbookFiller& fillLogbook, const Progress&);

}  // namespace steelyard
