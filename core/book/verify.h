// Checks a book's file and every invariant that the schema alone can't keep. Says what is wrong and where; changes nothing.
#pragma once

#include "core/base/progress.h"
#include "core/storage/database.h"

#include <QtCore/QStringList>

namespace steelyard {

struct VerifyReport {
    qint64 athletes = 0;
    qint64 sessions = 0;
    qint64 sets = 0;
    QStringList findings;  // empty: the book is sound
};

// Fails only when the book can't be read at all, or with Cancelled.
[[nodiscard]] Result<VerifyReport> verifyBook(Database&, const Progress&);

}  // namespace steelyard
