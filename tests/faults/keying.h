// What the keying program of these tests does with a book: the n-th set it types is always the same, so that a book can be
// checked for what was acknowledged.
#pragma once

#include "core/book/book.h"

#include <string>

namespace steelyard::test {

// The only lift line that the test book (support/temp_book.h) can have.
[[nodiscard]] Result<LiftLine> onlyLine(Book& book);
[[nodiscard]] SetEntry typedSet(int n);
[[nodiscard]] QDate typedDay(int n);
[[nodiscard]] Result<bool> typeSet(Book& book, const LiftLine& line, int n);
[[nodiscard]] Result<int> countSets(Book& book);
// Empty: the book holds exactly the sets 1 to n, as they were typed, and verify finds nothing. Else what is wrong.
[[nodiscard]] std::string differenceFromTyped(Book& book, int n);

inline constexpr int kRowsAnImport = 40;
// A logbook file with the n-th batch of rows, of a lifter that the book learns with them.
[[nodiscard]] QByteArray batchCsv(int n);

}  // namespace steelyard::test
