// One book in the place of another, whatever moment the program ends at. The other is set aside whole, with its journals.
//
//   STEELYARD_TRY(const QString aside, putInPlace(book, prepared, clock.nowUtc()));   // "club.steelyard.before-restore-…Z"
//   STEELYARD_CHECK(finishPuttingInPlace(book));                                       // what a cut-off start left to do
//
// The prepared book is one file, closed, beside the book. Its new name (".ready-<utc>") is the decision: what comes after it is
// done again, by the next opening, until it is done. A journal never stands beside a book that it isn't of, except in the
// moment before that opening.
// Whoever calls holds the book (core/book/book_hold.h), and nobody in this process has it open. Failure: Storage.
#pragma once

#include "core/base/result.h"

#include <QtCore/QDateTime>

namespace steelyard {

// The name that the replaced book has now; empty when there was none.
[[nodiscard]] Result<QString> putInPlace(const QString& book, const QString& prepared, const QDateTime& utc);
[[nodiscard]] Result<void> finishPuttingInPlace(const QString& book);
// Whether that is still to be done, so that a book may seem to be missing.
[[nodiscard]] bool isHalfPutInPlace(const QString& book);

}  // namespace steelyard
