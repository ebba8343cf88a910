// The schema's history: numbered SQL scripts. The book's version (PRAGMA user_version) is the highest number, and stands
// nowhere else.
//
// A book of an older version is copied aside first (VACUUM INTO, checked), then each step runs in one transaction with
// its new version, foreign keys checked before the commit. A book of a newer version is refused.
#pragma once

#include "core/storage/database.h"

#include <QtCore/QByteArray>

#include <vector>

namespace steelyard {

struct Migration {
    int version = 0;
    QByteArray script;
};

// The scripts built into the program, ascending from 1.
[[nodiscard]] std::vector<Migration> builtInMigrations();
[[nodiscard]] Result<int> schemaVersion(Database&);
// What is said of a book of this version, which is above the highest number here.
[[nodiscard]] Error tooNew(int version);
// Runs what is missing. An empty file gets everything; `copyAside` is where an older book is copied first (empty: the
// caller has its own copy).
[[nodiscard]] Result<void> migrate(Database&, const std::vector<Migration>&, const QString& copyAside);

}  // namespace steelyard
