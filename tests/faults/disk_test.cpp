// A disk that is full, a folder that is protected: the coach is told what happened, what was saved stays, and work goes on once the
// cause is gone.
#include "core/storage/statement.h"
#include "tests/faults/keying.h"
#include "tests/faults/keying_process.h"
#include "tests/support/temp_book.h"

#include <QtCore/QDir>
#include <QtCore/QFile>

#include <unistd.h>

#include <cstdio>

namespace steelyard {
namespace {

using test::KeyingProcess;
using test::must;
using test::TempBook;

void expectTheWholeStory(const KeyingProcess& typing, const char* refusal)
{
    EXPECT_EQ(typing.exitCode(), 0) << typing.output().constData();
    ASSERT_TRUE(typing.said("refused: ").has_value()) << typing.output().constData();
    EXPECT_TRUE(typing.said("refused: ")->startsWith(QString::fromLatin1(refusal)))
        << qPrintable(*typing.said("refused: "));
    EXPECT_GT(typing.said("acknowledged ").value_or(QString()).toInt(), 10);
    EXPECT_EQ(typing.said("difference: "), QString()) << "all that was acknowledged is there, and nothing else";
    EXPECT_EQ(typing.said("again: "), QString()) << "with room, the set that was refused goes in";
    EXPECT_EQ(typing.said("undone: "), QString());
}

TEST(DiskThatTakesNoMore, RefusesASetAndKeepsTheOthers)
{
    TempBook book;
    const QString path = book.path();
    book.close();
    KeyingProcess typing;
    typing.start({QStringLiteral("full"), path, QStringLiteral("--room"), QStringLiteral("900000")});
    typing.finish();
    expectTheWholeStory(typing, "The disk did not take or give the data, so nothing was changed.");
    EXPECT_EQ(test::differenceFromTyped(*must(Book::open(path, book.clock())),
                                        typing.said("acknowledged ").value_or(QString()).toInt()),
              "");
}

// A disk of its own in the memory, where this machine lets one be made (unshare and mount); else the limit on files again, so
// that the rest of the story is told in any case.
TEST(DiskThatIsFull, IsNamedAndWorkGoesOnWhenThereIsRoomAgain)
{
    TempBook book;
    const QString path = book.path();
    book.close();
    const QTemporaryDir disk;
    const QStringList arrange{QStringLiteral("unshare"), QStringLiteral("--map-root-user"), QStringLiteral("--mount"),
                              QStringLiteral("sh"), QStringLiteral("-ec")};
    const QString mount = QStringLiteral("mount -t tmpfs -o size=2m none '%1'").arg(disk.path());
    const bool mountable = QProcess::execute(arrange.front(), arrange.mid(1) << mount) == 0;
    KeyingProcess typing;
    if (mountable) {
        const QString onDisk = QDir(disk.path()).filePath(QStringLiteral("club.steelyard"));
        const QString ballast = QDir(disk.path()).filePath(QStringLiteral("ballast"));
        const QString fill =
            QStringLiteral("cp '%1' '%2'; head -c 600000 /dev/zero > '%3'; exec \"$@\"").arg(path, onDisk, ballast);
        typing.start({QStringLiteral("full"), onDisk, QStringLiteral("--ballast"), ballast},
                     arrange + QStringList{mount + u';' + fill, QStringLiteral("sh")});
    } else {
        std::puts("no disk can be mounted here; a limit on the size of files stands for it");
        typing.start({QStringLiteral("full"), path, QStringLiteral("--room"), QStringLiteral("700000")});
    }
    typing.finish();
    expectTheWholeStory(typing, mountable ? "The disk is full, so nothing was changed. Free some space and try again."
                                          : "The disk did not take or give the data, so nothing was changed.");
}

class ProtectedFolder : public testing::Test {
protected:
    void SetUp() override
    {
        for (int n = 1; n <= 3; ++n) must(test::typeSet(*m_book, m_book.line(), n));
        m_path = m_book.path();
    }
    void protect()
    {
        const QFileDevice::Permissions read = QFile::ReadOwner | QFile::ReadGroup | QFile::ReadOther;
        for (const QFileInfo& file : QFileInfo(m_path).dir().entryInfoList(QDir::Files))
            ASSERT_TRUE(QFile::setPermissions(file.filePath(), read));
        ASSERT_TRUE(QFile::setPermissions(QFileInfo(m_path).path(),
                                          read | QFile::ExeOwner | QFile::ExeGroup | QFile::ExeOther));
    }
    void TearDown() override
    {
        QFile::setPermissions(QFileInfo(m_path).path(), QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
    }
    TempBook m_book;
    QString m_path;
};

TEST_F(ProtectedFolder, OpensForReadingAndSaysSoWhenAnythingIsToBeStored)
{
    m_book.close();
    protect();
    KeyingProcess reading;
    reading.start({QStringLiteral("stranger"), m_path});
    reading.finish();
    EXPECT_EQ(reading.exitCode(), 0) << reading.output().constData();
    EXPECT_TRUE(reading.output().startsWith("reading\nsets 3\n")) << reading.output().constData();
    ASSERT_TRUE(reading.said("refused: ").has_value()) << reading.output().constData();
    EXPECT_TRUE(reading.said("refused: ")->contains(QStringLiteral("open for reading only, so nothing was changed")));
}

TEST_F(ProtectedFolder, WithAJournalThatNobodyPutIntoTheBookIsNotReadWithoutIt)
{
    // As a stick that was pulled out leaves it: the newest sets stand in the journal alone.
    const QTemporaryDir stick;
    const QString copy = stick.filePath(QStringLiteral("club.steelyard"));
    ASSERT_TRUE(QFile::copy(m_path, copy));
    ASSERT_TRUE(QFile::copy(m_path + QStringLiteral("-wal"), copy + QStringLiteral("-wal")));
    ASSERT_GT(QFileInfo(copy + QStringLiteral("-wal")).size(), 0);
    m_path = copy;
    protect();
    KeyingProcess reading;
    reading.start({QStringLiteral("stranger"), m_path});
    reading.finish();
    EXPECT_EQ(reading.exitCode(), 1);
    ASSERT_TRUE(reading.said("failed: ").has_value()) << reading.output().constData();
    EXPECT_TRUE(reading.said("failed: ")->contains(QStringLiteral("Copy the whole folder")))
        << reading.output().constData();
}

}  // namespace
}  // namespace steelyard
