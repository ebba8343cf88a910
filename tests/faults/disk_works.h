// Everything that writes files of its own beside a book or into it, as the keying program does it on a disk that is full.
#pragma once

#include "core/book/book.h"

#include <QtCore/QStringList>

namespace steelyard::test {

// "import" a file; save a "copy"; "export" everything; "update" an older book; "salvage" into a new one. What they make stands beside the
// book.
[[nodiscard]] QStringList diskWorks();
[[nodiscard]] Result<void> doDiskWork(const QString& work, const QString& book, const Clock& clock);

}  // namespace steelyard::test
