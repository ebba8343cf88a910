// How much a book holds, and what another lacks of it: what a coach wants to know before one takes the place of the other.
//
//   STEELYARD_TRY(const BookContent there, contentOf(*backup));
//   STEELYARD_TRY(const BookLoss loss, lossAgainst(present.path(), backup->path()));
//
// The same lifter and line are those with the same uuid, the same set is the one with the same number in its line and session.
// Both books have today's form and are closed or read only. Failures: Storage.
#pragma once

#include "core/storage/database.h"

#include <QtCore/QDate>

namespace steelyard {

struct BookContent {
    qint64 athletes = 0;
    qint64 sessions = 0;
    qint64 sets = 0;
    std::optional<QDate> lastSession;
    friend bool operator==(const BookContent&, const BookContent&) = default;
};

struct BookLoss {
    qint64 athletes = 0;
    qint64 sessions = 0;
    qint64 sets = 0;
    qint64 setsChanged = 0;  // there, and say something else
    [[nodiscard]] bool none() const { return athletes + sessions + sets + setsChanged == 0; }
    friend bool operator==(const BookLoss&, const BookLoss&) = default;
};

[[nodiscard]] Result<BookContent> contentOf(Database&);
[[nodiscard]] Result<BookLoss> lossAgainst(const QString& book, const QString& other);

}  // namespace steelyard
