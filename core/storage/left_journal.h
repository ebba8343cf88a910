// A journal that a book has beside it since the program that wrote it ended suddenly. SQLite takes whatever journal stands there for
// the book's own; one of another book, or of another copy of this book, would be blended into it without a word.
//
//   if (hasJournal(path)) STEELYARD_CHECK(checkLeftJournal(*reader));   // before anybody writes
//
// Only a check of the whole file tells (a second for a million sets), so it is made where a journal was left and nowhere else.
#pragma once

#include "core/storage/database.h"

namespace steelyard {

// What SQLite calls the journal of this book; there may be none.
[[nodiscard]] QString journalOf(const QString& book);
[[nodiscard]] bool hasJournal(const QString& book);

// The book as it reads with that journal. Storage when it isn't sound; a reader changes neither.
[[nodiscard]] Result<void> checkLeftJournal(Database& reader);

}  // namespace steelyard
