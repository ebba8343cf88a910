// What the keying program does with backups, for tests that end it in the middle or give it no room.
#pragma once

#include "core/care/backup_shelf.h"

#include <functional>

namespace steelyard::test {

using Say = std::function<void(const QByteArray& line)>;

// Backups one after the other: "acknowledged N" with the number of each.
[[nodiscard]] Result<void> keepUntilTheEnd(const QString& book, const BackupShelf& shelf, const Say& say);
// Restores the one and the other in turns: "acknowledged N", odd for the first, even for the second.
[[nodiscard]] Result<void> restoreUntilTheEnd(const QString& book, const QStringList& backups, const BackupShelf& shelf,
                                              const Clock& clock, const Say& say);
// Keeps backups until one is refused, looks at those that are there, makes room and keeps one more. `fill` takes the room away.
[[nodiscard]] Result<void> keepWithoutRoom(const QString& book, const BackupShelf& shelf, const BackupShelf& second,
                                           const std::function<void()>& fill, const std::function<void()>& makeRoom,
                                           const Say& say);

}  // namespace steelyard::test
