// What must be on the disk before the next step is taken: a file's bytes, or which names a folder holds.
//
//   STEELYARD_CHECK(syncFile(copy));            // its bytes
//   ... rename it
//   STEELYARD_CHECK(syncFolderOf(copy));        // and its name
//
// Never for a book that is open: closing a plain handle on it would drop this process's locks. Some file systems can't sync a
// folder; that is no failure. Failure: Storage.
#pragma once

#include "core/base/result.h"

namespace steelyard {

[[nodiscard]] Result<void> syncFile(const QString& path);
[[nodiscard]] Result<void> syncFolderOf(const QString& path);
// Takes the place of what may stand at `to`, in one step, and is durable afterwards.
[[nodiscard]] Result<void> renameOver(const QString& from, const QString& to);

}  // namespace steelyard
