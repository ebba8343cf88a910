// A book in which every field of every kind of row is away from its default, with names and notes that try to break out of
// a file format. What an export forgets shows when such a book is compared with its copy.
#pragma once

#include "core/book/book.h"

namespace steelyard::test {

inline const QString kFirstLifter = QStringLiteral("=cmd() Ünïcödé 力");
inline const QString kSecondLifter = QStringLiteral("'x \"Two\", Lifter");

// Fills an empty book (nothing in it at all) with two athletes.
void fillFullBook(Book&);
[[nodiscard]] SetEntry fullSet(int number);

// Reads the sets and ratings of a logbook CSV into a book that knows all its names already, by a reader of the tests' own.
[[nodiscard]] Result<void> fillFromCsv(Transaction&, const QString& csvPath);

}  // namespace steelyard::test
