#include "core/storage/book_place.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtCore/QStorageInfo>

#include <algorithm>

namespace steelyard {
namespace {

struct BookPlaceText {
    Q_DECLARE_TR_FUNCTIONS(BookPlaceText)
};

constexpr const char* kOverNetworks[] = {"9p",     "afs",   "ceph", "cifs", "coda",  "davfs", "gfs2", "glusterfs",
                                         "lustre", "ncpfs", "nfs",  "nfs4", "ocfs2", "smb2",  "smb3", "smbfs"};
// Over FUSE most things are a network; these are disks.
constexpr const char* kDisksOverFuse[] = {"fuseblk",    "fuse.ntfs",  "fuse.ntfs-3g",  "fuse.exfat", "fuse.gocryptfs",
                                          "fuse.encfs", "fuse.cryfs", "fuse.mergerfs", "fuse.bindfs"};
// Beginnings of names, in small letters.
constexpr const char* kSynchronised[] = {"dropbox",  "google drive", "googledrive", "icloud",  "nextcloud",
                                         "onedrive", "owncloud",     "pcloud",      "seafile", "syncthing"};

template <std::size_t N>
bool isOneOf(const char* const (&names)[N], const QByteArray& name)
{
    return std::any_of(std::begin(names), std::end(names), [&](const char* each) { return name == each; });
}

bool isOverNetwork(const QByteArray& fileSystem)
{
    if (isOneOf(kOverNetworks, fileSystem)) return true;
    return fileSystem.startsWith("fuse") && !isOneOf(kDisksOverFuse, fileSystem);
}

bool isSynchronised(const QString& path)
{
    const QStringList folders = QFileInfo(path).absolutePath().split(QLatin1Char('/'), Qt::SkipEmptyParts);
    return std::any_of(folders.begin(), folders.end(), [](const QString& folder) {
        const QString name = folder.toCaseFolded();
        return std::any_of(std::begin(kSynchronised), std::end(kSynchronised),
                           [&](const char* start) { return name.startsWith(QLatin1StringView(start)); });
    });
}

}  // namespace

PlaceCaution placeCaution(const QByteArray& fileSystem, const QString& path)
{
    if (isOverNetwork(fileSystem.toLower())) return PlaceCaution::Network;
    return isSynchronised(path) ? PlaceCaution::Synchronised : PlaceCaution::None;
}

QByteArray fileSystemAt(const QString& path)
{
    return QStorageInfo(QFileInfo(path).absolutePath()).fileSystemType();
}

QString placeSentence(PlaceCaution caution)
{
    switch (caution) {
    case PlaceCaution::Network:
        return BookPlaceText::tr(
            "This book lies on a network drive, where a break in the line can damage it. Keep it on "
            "this computer and put backups there.");
    case PlaceCaution::Synchronised:
        return BookPlaceText::tr(
            "This book lies in a folder that another program synchronises, which can swap it while "
            "it is open. Keep it elsewhere and put backups there.");
    case PlaceCaution::None:
        break;
    }
    return {};
}

}  // namespace steelyard
