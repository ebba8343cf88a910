// Where a book lies, and whether that is a place that can harm it: a share on a network, whose locks are not to be trusted, or a
// folder that another program keeps the same on several computers and so swaps files under an open book.
//
//   if (const PlaceCaution caution = placeCaution(fileSystemAt(path), path); caution != PlaceCaution::None) ...
//
// placeCaution() is pure but for looking at the folders' names. Sources: sqlite.org/useovernet.html and howtocorrupt.html (2.1, 2.3,
// 2.5); the names of file systems are those of Linux's /proc/filesystems, of folders those that such programs make.
#pragma once

#include <QtCore/QByteArray>
#include <QtCore/QString>

namespace steelyard {

enum class PlaceCaution { None, Network, Synchronised };

[[nodiscard]] PlaceCaution placeCaution(const QByteArray& fileSystem, const QString& path);
// "ext4"; empty where the system doesn't say.
[[nodiscard]] QByteArray fileSystemAt(const QString& path);
// One sentence for the coach; empty for None.
[[nodiscard]] QString placeSentence(PlaceCaution caution);

}  // namespace steelyard
