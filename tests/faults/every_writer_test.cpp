// A full disk under everything that writes, and faults that come while another one is being mended.
#include "core/book/verify.h"
#include "core/exchange/new_book.h"
#include "core/samples/sample_club.h"
#include "tests/faults/disk_works.h"
#include "tests/faults/fault_length.h"
#include "tests/faults/keying.h"
#include "tests/faults/keying_process.h"
#include "tests/support/temp_book.h"

#include <QtCore/QDir>
#include <QtCore/QFile>

#include <cstdio>
#include <random>

namespace steelyard::test {
namespace {

class EveryWriter : public testing::TestWithParam<const char*> {
protected:
    // The book that the work is done with, as a file to be copied to the disk.
    QString source()
    {
        if (QByteArrayView(GetParam()) == "update")
            return QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/databases/version_1.steelyard");
        const QString path = m_folder.filePath(QStringLiteral("base.steelyard"));
        const FixedClock clock(QDate(2026, 3, 2));
        const auto book = must(newBook(path, clock));
        must(fillSampleClub(*book, {.athletes = 2, .years = 1, .lastDay = clock.today()}, {}));
        return path;
    }
    // On a disk of its own in the memory of which `room` is left, where this machine lets one be made; else with a limit on files.
    void work(const QByteArray& room)
    {
        const QTemporaryDir disk;
        const QStringList arrange{QStringLiteral("unshare"), QStringLiteral("--map-root-user"),
                                  QStringLiteral("--mount"), QStringLiteral("sh"), QStringLiteral("-ec")};
        const QString mount = QStringLiteral("mount -t tmpfs -o size=16m none '%1'").arg(disk.path());
        const QString book = disk.filePath(QStringLiteral("club.steelyard"));
        const QString ballast = disk.filePath(QStringLiteral("ballast"));
        if (QProcess::execute(arrange.front(), arrange.mid(1) << mount) == 0) {
            const QString fill = QStringLiteral(
                                     "cp '%1' '%2'; chmod 600 '%2'; head -c 99m /dev/zero > '%3' 2>/dev/null || true; "
                                     "truncate -s -%4 '%3'; exec \"$@\"")
                                     .arg(source(), book, ballast, QString::fromLatin1(room));
            m_process.start({QStringLiteral("work"), book, QStringLiteral("--work"), QString::fromLatin1(GetParam()),
                             QStringLiteral("--ballast"), ballast},
                            arrange + QStringList{mount + u';' + fill, QStringLiteral("sh")});
        } else {
            std::puts("no disk can be mounted here; a limit on the size of files stands for it");
            ASSERT_TRUE(QFile::copy(source(), book));
            ASSERT_TRUE(QFile::setPermissions(book, QFile::ReadOwner | QFile::WriteOwner));
            m_process.start({QStringLiteral("work"), book, QStringLiteral("--work"), QString::fromLatin1(GetParam()),
                             QStringLiteral("--room"), QStringLiteral("20000")});
        }
        m_process.finish();
    }
    QTemporaryDir m_folder;
    KeyingProcess m_process;
};

TEST_P(EveryWriter, IsRefusedByAFullDiskLeavesNothingHalfAndGoesOnWhenThereIsRoom)
{
    work("60K");
    EXPECT_EQ(m_process.exitCode(), 0) << m_process.output().constData();
    const auto refused = m_process.said("refused: ");
    ASSERT_TRUE(refused.has_value()) << m_process.output().constData();
    EXPECT_FALSE(refused->startsWith(u" [")) << "it says what happened: " << qPrintable(*refused);
    EXPECT_EQ(m_process.said("left: "), QString()) << "nothing half written stays";
    EXPECT_EQ(m_process.said("again: "), QStringLiteral("done"));
    EXPECT_EQ(m_process.said("findings: "), QString());
}

std::vector<const char*> works()
{
    return {"import", "copy", "export", "update", "salvage"};
}

std::string nameOfWriter(const testing::TestParamInfo<const char*>& writer)
{
    return writer.param;
}

INSTANTIATE_TEST_SUITE_P(Each, EveryWriter, testing::ValuesIn(works()), nameOfWriter);

TEST(EveryWriterThereIs, IsTried)
{
    ASSERT_EQ(static_cast<qsizetype>(works().size()), diskWorks().size());
    for (const char* work : works()) EXPECT_TRUE(diskWorks().contains(QString::fromLatin1(work))) << work;
}

// The program is killed; so is the next one, while it puts the journal that was left into the book; and the one after it.
TEST(CompoundFaults, ARecoveryThatIsKilledAgainAndAgainLosesNothing)
{
    const int stories = faultsAreLong() ? 100 : 6;
    std::mt19937 random(7);
    for (int story = 0; story < stories; ++story) {
        TempBook book;
        book.close();
        KeyingProcess typing;
        typing.start({QStringLiteral("type"), book.path()});
        for (int i = 0; i < 30; ++i) ASSERT_TRUE(typing.firstLine().startsWith(QStringLiteral("acknowledged")));
        typing.kill();
        int killed = 0;
        for (int i = 0; i < 10; ++i) {
            KeyingProcess opening;
            opening.start({QStringLiteral("open"), book.path(), QStringLiteral("--die-after"),
                           QString::number(std::uniform_int_distribution<int>(1000, 60'000)(random))});
            opening.finish();
            killed += opening.wasKilled() ? 1 : 0;
        }
        EXPECT_GT(killed, 0);
        const auto again = must(Book::open(book.path(), book.clock()));
        const int there = must(countSets(*again));
        EXPECT_GE(there, std::max(30, typing.said("acknowledged ").value_or(QString()).toInt()));
        EXPECT_EQ(differenceFromTyped(*again, there), "");
    }
}

TEST(CompoundFaults, ASalvageThatIsKilledLeavesTheDamagedFileAndNoNewOne)
{
    std::mt19937 random(8);
    TempBook book;
    for (int n = 1; n <= 50; ++n) must(typeSet(*book, book.line(), n));
    book.close();
    const QByteArray before = fileBytes(book.path());
    const QString saved = book.file(QStringLiteral("saved.steelyard"));
    int killed = 0;
    for (int i = 0; i < (faultsAreLong() ? 200 : 12); ++i) {
        KeyingProcess saving;
        saving.start({QStringLiteral("work"), book.path(), QStringLiteral("--work"), QStringLiteral("salvage"),
                      QStringLiteral("--die-after"),
                      QString::number(std::uniform_int_distribution<int>(1000, 150'000)(random))});
        saving.finish();
        ASSERT_EQ(fileBytes(book.path()), before);
        killed += saving.wasKilled() ? 1 : 0;
        if (!QFile::exists(saved)) continue;
        EXPECT_EQ(differenceFromTyped(*must(Book::open(saved, book.clock())), 50), "") << "whole or not at all";
        ASSERT_TRUE(QFile::remove(saved));
    }
    EXPECT_GT(killed, 0);
}

}  // namespace
}  // namespace steelyard::test
