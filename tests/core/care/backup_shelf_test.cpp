#include "core/care/backup_shelf.h"

#include "core/care/checksum.h"
#include "core/edits/edits.h"
#include "core/exchange/book_dump.h"
#include "core/storage/migrations.h"
#include "tests/support/temp_book.h"

#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtCore/QProcess>
#include <QtCore/QStandardPaths>

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;
using test::workSet;

class ShelfClock final : public Clock {
public:
    void set(QDate day) { m_now = QDateTime(day, QTime(12, 0), Qt::UTC); }
    [[nodiscard]] QDate today() const override { return m_now.date(); }
    [[nodiscard]] QDateTime nowUtc() const override { return m_now; }

private:
    QDateTime m_now{QDate(2026, 3, 2), QTime(12, 0), Qt::UTC};
};

class Shelf : public testing::Test {
protected:
    TempBook m_book;
    ShelfClock m_clock;
    BackupShelf m_shelf{m_book.file(QStringLiteral("shelf")), m_clock};

    Backup keep(BackupReason reason = BackupReason::Daily) { return must(m_shelf.keep(m_book->database(), reason)); }
    void type(int number)
    {
        SetEntry set = workSet("40", 8);
        set.number = number;
        must(m_book->history().perform(addSet(m_book.line(), QDate(2026, 3, 2), set)));
    }
    static void change(const QString& path, qint64 at = 5000)
    {
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::ReadWrite));
        ASSERT_TRUE(file.seek(at));
        const QByteArray byte = file.read(1);
        ASSERT_TRUE(file.seek(at));
        ASSERT_EQ(file.write(QByteArray(1, static_cast<char>(byte[0] ^ 1))), 1);
    }
    static QByteArray contentOfFile(const QString& path)
    {
        return must(dumpContent(*must(Database::openReader(path))));
    }
    static QStringList names(const QString& folder) { return QDir(folder).entryList(QDir::Files | QDir::Hidden); }
};

TEST_F(Shelf, HoldsAWholeCopyThatOnlyItsOwnerReads)
{
    type(1);
    const Backup made = keep(BackupReason::Asked);
    EXPECT_EQ(QFileInfo(made.path).fileName(), QStringLiteral("20260302T120000Z-000001-asked.steelyard"));
    EXPECT_EQ(contentOfFile(made.path), must(dumpContent(m_book->database())));
    EXPECT_EQ(made.bytes, QFileInfo(made.path).size());
    const auto own = QFileDevice::ReadOwner | QFileDevice::WriteOwner | QFileDevice::ReadUser | QFileDevice::WriteUser;
    EXPECT_EQ(QFileInfo(made.path).permissions(), own);
    EXPECT_EQ(QFileInfo(checksumPath(made.path)).permissions(), own);
    EXPECT_EQ(QFileInfo(m_shelf.folder()).permissions(), own | QFileDevice::ExeOwner | QFileDevice::ExeUser);
    EXPECT_EQ(names(m_shelf.folder()).size(), 2) << names(m_shelf.folder()).join(u' ').toStdString();
    EXPECT_TRUE(m_shelf.check(made, {}));
}

// Outside check: the checksum is what coreutils' b2sum makes of the file, and reads.
TEST_F(Shelf, KeepsChecksumsThatAnotherProgramChecks)
{
    const Backup made = keep();
    QProcess b2sum;
    b2sum.setWorkingDirectory(m_shelf.folder());
    b2sum.start(QStringLiteral("b2sum"), {QStringLiteral("-c"), QFileInfo(checksumPath(made.path)).fileName()});
    ASSERT_TRUE(b2sum.waitForStarted()) << "b2sum is missing: it comes with coreutils";
    ASSERT_TRUE(b2sum.waitForFinished());
    EXPECT_EQ(b2sum.exitCode(), 0) << b2sum.readAllStandardError().constData();
    change(made.path);
    b2sum.start(QStringLiteral("b2sum"), {QStringLiteral("-c"), QFileInfo(checksumPath(made.path)).fileName()});
    ASSERT_TRUE(b2sum.waitForFinished());
    EXPECT_NE(b2sum.exitCode(), 0);
}

TEST_F(Shelf, GivesTheNewestThatIsAsItWas)
{
    EXPECT_FALSE(must(m_shelf.newestGood({})));
    const Backup first = keep(BackupReason::Asked);
    type(1);
    const Backup second = keep(BackupReason::Import);
    EXPECT_EQ(must(m_shelf.newestGood({})), second);
    change(second.path);
    const auto checked = m_shelf.check(second, {});
    ASSERT_FALSE(checked);
    EXPECT_EQ(checked.error().code, ErrorCode::Invalid);
    EXPECT_EQ(must(m_shelf.newestGood({})), first);
    ASSERT_TRUE(QFile::remove(checksumPath(first.path)));
    EXPECT_FALSE(must(m_shelf.newestGood({}))) << "without a checksum nobody can tell";
}

TEST_F(Shelf, IsDueOnceADayWhicheverWayTheClockGoes)
{
    EXPECT_TRUE(m_shelf.isDue());
    keep();
    EXPECT_FALSE(m_shelf.isDue());
    m_clock.set(QDate(2026, 3, 3));
    EXPECT_TRUE(m_shelf.isDue());
    keep();
    m_clock.set(QDate(2024, 3, 3));
    EXPECT_TRUE(m_shelf.isDue());
    keep();
    EXPECT_FALSE(m_shelf.isDue());
}

TEST_F(Shelf, WithAClockSetBackTwoYearsOverwritesAndForgetsNothing)
{
    for (int day = 0; day < 20; ++day) {
        m_clock.set(QDate(2026, 3, 2).addDays(day));
        keep();
    }
    const auto before = m_shelf.list();
    m_clock.set(QDate(2024, 3, 2));
    type(1);
    const Backup made = keep();
    EXPECT_EQ(must(m_shelf.newestGood({})), made) << "the newest, whatever its date says";
    EXPECT_EQ(made.number, 21);
    const auto after = m_shelf.list();
    EXPECT_EQ(after.front(), made);
    // The oldest of seven days loses its place among the days, and keeps one as the last of its week.
    EXPECT_EQ(std::vector<Backup>(after.begin() + 1, after.end()), before);
    keep();
    EXPECT_EQ(m_shelf.list().size(), after.size()) << "the same second, and the same day: the earlier one goes";
    EXPECT_EQ(m_shelf.list().front().number, 22);
}

TEST_F(Shelf, TakesInTheCopyThatAnUpdateOfTheBookLeftBesideIt)
{
    m_book.close();
    const QString old = m_book.path() + QStringLiteral(".before-version-9");
    ASSERT_TRUE(QFile::copy(QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/databases/version_1.steelyard"), old));
    const QByteArray bytes = test::fileBytes(old);
    m_book.reopen();
    keep();
    EXPECT_FALSE(QFile::exists(old));
    const auto there = m_shelf.list();
    ASSERT_EQ(there.size(), 2U);
    EXPECT_EQ(there[1].reason, BackupReason::Update);
    EXPECT_EQ(test::fileBytes(there[1].path), bytes) << "in the form that it had";
    EXPECT_TRUE(m_shelf.check(there[1], {}));
}

TEST_F(Shelf, LeavesWhatLooksLikeSuchACopyAndIsNoBook)
{
    QFile odd(m_book.path() + QStringLiteral(".before-version-9"));
    ASSERT_TRUE(odd.open(QIODevice::WriteOnly));
    ASSERT_EQ(odd.write("half"), 4);
    odd.close();
    keep();
    EXPECT_TRUE(odd.exists());
    EXPECT_EQ(m_shelf.list().size(), 1U);
}

TEST_F(Shelf, SweepsWhatAKilledProgramLeft)
{
    keep(BackupReason::Asked);
    for (const auto* name : {"20260302T120000Z-000002-daily.steelyard.unfinished",
                             "20260302T120000Z-000002-daily.steelyard.unfinished.part",
                             "20260302T120000Z-000002-daily.steelyard.blake2b"}) {
        QFile file(QDir(m_shelf.folder()).filePath(QString::fromLatin1(name)));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    }
    EXPECT_EQ(m_shelf.list().size(), 1U) << "none of them is a backup";
    keep(BackupReason::Asked);
    EXPECT_EQ(names(m_shelf.folder()).size(), 4) << names(m_shelf.folder()).join(u' ').toStdString();
}

TEST_F(Shelf, OfABookIsFoundByItsPlaceAndNamesNobody)
{
    const QString usual = BackupShelf::usualFolder(m_book.path());
    EXPECT_TRUE(usual.startsWith(QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation)));
    EXPECT_FALSE(usual.contains(QStringLiteral("club")));
    const QString here = QFileInfo(m_book.path()).path();
    EXPECT_EQ(BackupShelf::usualFolder(here + QStringLiteral("/./club.steelyard")), usual);
    EXPECT_NE(BackupShelf::usualFolder(here + QStringLiteral("/other.steelyard")), usual);
    m_book.close();
    ASSERT_TRUE(QFile::remove(m_book.path()));
    EXPECT_EQ(BackupShelf::usualFolder(m_book.path()), usual) << "a lost book's backups are found";
}

class SecondShelf : public Shelf {
protected:
    BackupShelf m_second{BackupShelf::folderIn(m_book.file(QStringLiteral("stick")), m_book.path()), m_clock};
};

TEST_F(SecondShelf, GetsTheNewestWhenTheStickIsThere)
{
    keep();
    const auto absent = m_second.bringFrom(m_shelf, {});
    ASSERT_FALSE(absent);
    EXPECT_EQ(absent.error().code, ErrorCode::NotFound);
    EXPECT_FALSE(QFile::exists(m_second.folder())) << "nothing is written where the stick should be";
    must(m_second.make());
    must(m_second.bringFrom(m_shelf, {}));
    ASSERT_EQ(m_second.list().size(), 1U);
    EXPECT_EQ(test::fileBytes(m_second.list().front().path), test::fileBytes(m_shelf.list().front().path));
    EXPECT_TRUE(m_second.check(m_second.list().front(), {}));
    must(m_second.bringFrom(m_shelf, {}));
    EXPECT_EQ(m_second.list().size(), 1U) << "the same one once";
}

TEST_F(SecondShelf, SaysWhenOneOnItWasChangedAndGetsAGoodOne)
{
    keep();
    must(m_second.make());
    must(m_second.bringFrom(m_shelf, {}));
    change(m_second.list().front().path);
    const auto said = m_second.bringFrom(m_shelf, {});
    ASSERT_FALSE(said);
    EXPECT_EQ(said.error().code, ErrorCode::Invalid);
    ASSERT_EQ(m_second.list().size(), 1U);
    EXPECT_TRUE(m_second.check(m_second.list().front(), {}));
    EXPECT_TRUE(m_second.bringFrom(m_shelf, {})) << "said once";
}

TEST_F(SecondShelf, PutsTheBackupsOfAFreshComputerAfterThoseItHas)
{
    for (int day = 0; day < 3; ++day) {
        m_clock.set(QDate(2026, 3, 2).addDays(day));
        keep();
    }
    must(m_second.make());
    must(m_second.bringFrom(m_shelf, {}));
    ASSERT_TRUE(QDir(m_shelf.folder()).removeRecursively());
    type(1);
    const Backup fresh = keep();
    EXPECT_EQ(fresh.number, 1);
    must(m_second.bringFrom(m_shelf, {}));
    EXPECT_EQ(test::fileBytes(m_second.list().front().path), test::fileBytes(fresh.path));
    EXPECT_GT(m_second.list().front().number, 3);
}

// Published: RFC 7693 gives BLAKE2b-512 of "abc"; of 256 bits, this is what coreutils 9.1 prints for `printf abc | b2sum -l 256`.
TEST(Checksum, IsBlake2bOf256Bits)
{
    QTemporaryDir folder;
    QFile file(folder.filePath(QStringLiteral("abc")));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    ASSERT_EQ(file.write("abc"), 3);
    file.close();
    EXPECT_EQ(must(checksumOf(file.fileName(), {})),
              QByteArray("bddd813c634239723171ef3fee98579b94964e3bb1cb3e427262c8c068d52319"));
}

}  // namespace
}  // namespace steelyard
