// A whole copy of an open book, sound and readable by its owner only, whatever the book's own file has come to meanwhile.
//
//   STEELYARD_CHECK(copyBook(db, path));
//
// It is written beside its place, checked there and on the disk; only then it takes the place of what was there. Failure: Storage, or Invalid
// where the book itself is, and what was there stays.
#pragma once

#include "core/storage/database.h"

namespace steelyard {

[[nodiscard]] Result<void> copyBook(Database&, const QString& to);

}  // namespace steelyard
