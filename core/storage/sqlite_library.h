// What is arranged with the SQLite library itself: once in a program, and for each connection beside its PRAGMAs.
//
//   prepareLibrary();                        // before the first connection; again does nothing
//   STEELYARD_CHECK(tameConnection(handle)); // limits, and no help for a forged schema
//   const auto header = readHeader(path);    // the first hundred bytes of a book
//
// Sources: sqlite.org, "Defense Against The Dark Arts" (security.html: limits and switches for files that others made),
// "How To Corrupt" (howtocorrupt.html, 2.2: a plain open and close of a file cancels the locks of its connections in the same
// process; hence readHeader).
#pragma once

#include "core/base/result.h"

#include <QtCore/QByteArray>
#include <QtCore/QString>

struct sqlite3;

namespace steelyard {

void prepareLibrary();

// Fails with Storage when the connection runs on another SQLite than this program calls: two of them in one process undo each
// other's locks.
[[nodiscard]] Result<void> tameConnection(sqlite3* handle);

// Through SQLite's own file system layer, so that no lock is lost. Shorter than asked for where the file is; nothing when it can't
// be read.
[[nodiscard]] std::optional<QByteArray> readHeader(const QString& path);

}  // namespace steelyard
