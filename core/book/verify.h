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

// Whether the file's pages hang together: a fraction of a second for a million sets, so that every book is looked over when it is
// opened. Storage when they don't. Values and links are verifyBook()'s business.
[[nodiscard]] Result<void> checkPages(Database&);

}  // namespace steelyard
