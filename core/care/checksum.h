// A file's BLAKE2b (256 bits, RFC 7693), kept beside it as `b2sum -c` reads it: an integrity check of SQLite doesn't see a changed
// letter, this does.
//
//   STEELYARD_CHECK(keepChecksum(copy, finalName));     // finalName.blake2b
//   STEELYARD_CHECK(checkChecksum(backup, progress));
//
// Failures: Storage (reading, writing), Invalid (the file isn't what it was), NotFound (nothing is kept beside it), Cancelled.
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"

#include <QtCore/QByteArray>

namespace steelyard {

[[nodiscard]] Result<QByteArray> checksumOf(const QString& path, const Progress&);  // in hexadecimal digits
[[nodiscard]] QString checksumPath(const QString& file);
// Of `content`, which will be called `file`. Readable by its owner only.
[[nodiscard]] Result<void> keepChecksum(const QString& content, const QString& file);
// As it was kept; empty when nothing is.
[[nodiscard]] QByteArray keptChecksum(const QString& file);
[[nodiscard]] Result<void> checkChecksum(const QString& file, const Progress&);

}  // namespace steelyard
