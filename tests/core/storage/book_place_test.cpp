#include "core/storage/book_place.h"

#include <QtCore/QDir>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

struct Place {
    const char* fileSystem;
    const char* path;
    PlaceCaution caution;
};

constexpr Place kPlaces[] = {
    {"ext4", "/home/coach/club.steelyard", PlaceCaution::None},
    {"btrfs", "/home/coach/club.steelyard", PlaceCaution::None},
    {"tmpfs", "/tmp/club.steelyard", PlaceCaution::None},
    {"vfat", "/media/stick/club.steelyard", PlaceCaution::None},
    {"fuseblk", "/media/disk/club.steelyard", PlaceCaution::None},
    {"", "/home/coach/club.steelyard", PlaceCaution::None},
    {"nfs4", "/srv/club.steelyard", PlaceCaution::Network},
    {"cifs", "/mnt/office/club.steelyard", PlaceCaution::Network},
    {"SMB3", "/mnt/office/club.steelyard", PlaceCaution::Network},
    {"fuse.sshfs", "/mnt/far/club.steelyard", PlaceCaution::Network},
    {"9p", "/mnt/host/club.steelyard", PlaceCaution::Network},
    {"ext4", "/home/coach/Nextcloud/gym/club.steelyard", PlaceCaution::Synchronised},
    {"ext4", "/home/coach/OneDrive - Gym/club.steelyard", PlaceCaution::Synchronised},
    {"ext4", "/home/coach/Syncthing.steelyard", PlaceCaution::None},
};

TEST(BookPlace, IsWarnedOfOnNetworksAndInSynchronisedFolders)
{
    for (const Place& place : kPlaces)
        EXPECT_EQ(placeCaution(place.fileSystem, QString::fromLatin1(place.path)), place.caution)
            << place.fileSystem << ' ' << place.path;
}

TEST(BookPlace, HasASentenceForEachCautionAndNoneWithout)
{
    EXPECT_TRUE(placeSentence(PlaceCaution::None).isEmpty());
    EXPECT_TRUE(placeSentence(PlaceCaution::Network).contains(QStringLiteral("network")));
    EXPECT_TRUE(placeSentence(PlaceCaution::Synchronised).contains(QStringLiteral("synchronises")));
}

TEST(BookPlace, IsAskedOfTheSystem)
{
    EXPECT_FALSE(fileSystemAt(QDir::tempPath() + QStringLiteral("/club.steelyard")).isEmpty());
}

}  // namespace
}  // namespace steelyard
