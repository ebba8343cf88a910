// Backups and restoring that are cut off, or have no room: what is listed is whole, and the book is the one or the other.
#include "core/book/verify.h"
#include "core/care/backup_shelf.h"
#include "core/exchange/book_dump.h"
#include "core/storage/book_copy.h"
#include "tests/faults/keying.h"
#include "tests/faults/keying_process.h"
#include "tests/support/temp_book.h"

#include <QtCore/QDir>
#include <QtCore/QElapsedTimer>

#include <random>

namespace steelyard {
namespace {

using test::KeyingProcess;
using test::must;
using test::TempBook;

int careKills()
{
    const int wanted = qEnvironmentVariableIntValue("STEELYARD_FAULT_KILLS");
    return (wanted > 0 ? wanted : 300) / 10;
}

// How long six acknowledgements take when nobody kills; moments are spread over that.
int rehearse(const QStringList& words)
{
    QElapsedTimer timer;
    timer.start();
    KeyingProcess rehearsal;
    rehearsal.start(words);
    for (int i = 0; i < 6; ++i) EXPECT_TRUE(rehearsal.firstLine().startsWith(QStringLiteral("acknowledged")));
    const int most = static_cast<int>(timer.nsecsElapsed() / 1000);
    rehearsal.kill();
    return most;
}

class CutOff : public testing::Test {
protected:
    CutOff()
    {
        for (int n = 1; n <= 3; ++n) must(test::typeSet(*m_book, m_book.line(), n));
        must(copyBook(m_book->database(), m_first));
        must(test::typeSet(*m_book, m_book.line(), 4));
        must(copyBook(m_book->database(), m_second));
        m_book.close();
    }
    // True when it was killed; else the machine was faster than the alarm.
    bool killAt(const QStringList& words, std::mt19937& random, int most)
    {
        KeyingProcess process;
        process.start(words
                      + QStringList{QStringLiteral("--die-after"),
                                    QString::number(std::uniform_int_distribution<int>(1000, most)(random))});
        process.finish();
        m_acknowledged = process.said("acknowledged ").value_or(QString()).toInt();
        EXPECT_TRUE(process.wasKilled()) << process.output().constData();
        return process.wasKilled();
    }
    TempBook m_book;
    QString m_first = m_book.file(QStringLiteral("first.steelyard"));
    QString m_second = m_book.file(QStringLiteral("second.steelyard"));
    BackupShelf m_shelf{m_book.file(QStringLiteral("shelf")), m_book.clock()};
    int m_acknowledged = 0;
};

TEST_F(CutOff, WhileBackupsAreMadeLeavesOnlyWholeOnesInTheListAndTheNextStartSweeps)
{
    const QStringList words{QStringLiteral("keep"), m_book.path(), m_shelf.folder()};
    const int most = rehearse(words);
    std::mt19937 random(11);
    int inTheMiddle = 0;
    for (int kill = 0; kill < careKills(); ++kill) {
        ASSERT_TRUE(killAt(words, random, most));
        const auto there = m_shelf.list();
        ASSERT_FALSE(there.empty());
        ASSERT_GE(there.front().number, m_acknowledged) << "kill " << kill;
        for (const Backup& backup : there) ASSERT_TRUE(m_shelf.check(backup, {})) << "kill " << kill;
        const auto files = QDir(m_shelf.folder()).entryList(QDir::Files);
        inTheMiddle += files.size() > static_cast<qsizetype>(there.size()) * 2 ? 1 : 0;
        const Backup next = must(m_shelf.keep(*must(Database::openReader(m_book.path())), BackupReason::Asked));
        ASSERT_EQ(next.number, there.front().number + 1);
        ASSERT_EQ(QDir(m_shelf.folder()).entryList(QDir::Files).size(),
                  static_cast<qsizetype>(m_shelf.list().size()) * 2);
    }
    EXPECT_GT(inTheMiddle, 0) << "some kills come while a backup is half made";
    RecordProperty("kills", careKills());
    RecordProperty("halfMade", inTheMiddle);
}

TEST_F(CutOff, WhileRestoringLeavesTheOneBookOrTheOtherWhole)
{
    const QByteArray first = must(dumpContent(*must(Database::openReader(m_first))));
    const QByteArray second = must(dumpContent(*must(Database::openReader(m_second))));
    ASSERT_NE(first, second);
    const QStringList words{QStringLiteral("restore"), m_book.path(), m_shelf.folder(), m_first, m_second};
    const int most = rehearse(words);
    std::mt19937 random(12);
    int finished = 0;
    for (int kill = 0; kill < careKills(); ++kill) {
        const QByteArray before = must(dumpContent(must(Book::open(m_book.path(), m_book.clock()))->database()));
        ASSERT_TRUE(killAt(words, random, most));
        finished += QFile::exists(m_book.path()) ? 0 : 1;
        const auto book = must(Book::open(m_book.path(), m_book.clock()));
        ASSERT_FALSE(book->isReadOnly());
        ASSERT_EQ(must(verifyBook(book->database(), {})).findings, QStringList()) << "kill " << kill;
        const QByteArray content = must(dumpContent(book->database()));
        const QByteArray& acknowledged = m_acknowledged == 0 ? before : m_acknowledged % 2 == 1 ? first : second;
        const QByteArray& next = m_acknowledged % 2 == 1 ? second : first;
        ASSERT_TRUE(content == acknowledged || content == next) << "kill " << kill << " after " << m_acknowledged;
    }
    EXPECT_EQ(finished, 0) << "at no moment the place is empty";
}

TEST_F(CutOff, ARestoreThatFindsNoRoomLeavesTheBookAndNothingElse)
{
    const QByteArray before = must(dumpContent(*must(Database::openReader(m_book.path()))));
    const QDir folder = QFileInfo(m_book.path()).dir();
    const QStringList names = folder.entryList(QDir::Files | QDir::Hidden);
    KeyingProcess restoring;
    restoring.start({QStringLiteral("restore"), m_book.path(), m_shelf.folder(), m_first, m_second,
                     QStringLiteral("--room"), QStringLiteral("100000")});
    restoring.finish();
    EXPECT_EQ(restoring.exitCode(), 1) << restoring.output().constData();
    EXPECT_TRUE(restoring.said("failed: ").has_value());
    EXPECT_EQ(folder.entryList(QDir::Files | QDir::Hidden), names);
    EXPECT_EQ(must(dumpContent(must(Book::open(m_book.path(), m_book.clock()))->database())), before);
}

// Two faults at once: cut off after the decision, and then a disk that takes nothing more.
TEST_F(CutOff, AfterTheDecisionTheNextStartFinishesWithoutRoomToo)
{
    const QByteArray first = must(dumpContent(*must(Database::openReader(m_first))));
    ASSERT_TRUE(QFile::rename(m_first, m_book.path() + QStringLiteral(".ready-20260302T120000Z")));
    KeyingProcess next;
    next.start({QStringLiteral("dump"), m_book.path(), QStringLiteral("--room"), QStringLiteral("40000")});
    next.finish();
    EXPECT_EQ(next.exitCode(), 0) << next.output().right(300).constData();
    EXPECT_EQ(next.output(), first + '\n');
    EXPECT_TRUE(QFile::exists(m_book.path() + QStringLiteral(".before-restore-20260302T120000Z")));
}

// Row by row as on a disk of 2 MB, where one can be mounted; else with a limit on the size of files.
TEST(NoRoomForABackup, IsSaidAndNothingThatIsListedIsCutShort)
{
    TempBook book;
    for (int n = 1; n <= 3; ++n) must(test::typeSet(*book, book.line(), n));
    book.close();
    const QTemporaryDir disk;
    const QStringList arrange{QStringLiteral("unshare"), QStringLiteral("--map-root-user"), QStringLiteral("--mount"),
                              QStringLiteral("sh"), QStringLiteral("-ec")};
    const QString mount = QStringLiteral("mount -t tmpfs -o size=2m none '%1'").arg(disk.path());
    KeyingProcess keeping;
    if (QProcess::execute(arrange.front(), arrange.mid(1) << mount) == 0) {
        const QString shelf = QDir(disk.path()).filePath(QStringLiteral("shelf"));
        const QString ballast = QDir(disk.path()).filePath(QStringLiteral("ballast"));
        keeping.start({QStringLiteral("keepfull"), book.path(), shelf, QStringLiteral("--ballast"), ballast},
                      arrange + QStringList{mount + QStringLiteral("; exec \"$@\""), QStringLiteral("sh")});
    } else {
        keeping.start({QStringLiteral("keepfull"), book.path(), book.file(QStringLiteral("shelf")),
                       QStringLiteral("--room"), QStringLiteral("100000")});
    }
    keeping.finish();
    ASSERT_EQ(keeping.exitCode(), 0) << keeping.output().constData();
    EXPECT_TRUE(keeping.said("refused: ").has_value()) << keeping.output().constData();
    EXPECT_TRUE(keeping.said("second refused: ").has_value()) << keeping.output().constData();
    EXPECT_EQ(keeping.said("second has "), QStringLiteral("0 of 0"));
    const QString sound = keeping.said("sound ").value_or(QString());
    const QStringList counts = sound.split(QStringLiteral(" of "));
    ASSERT_EQ(counts.size(), 2) << keeping.output().constData();
    EXPECT_EQ(counts[0], counts[1]);
    EXPECT_GE(counts[0].toInt(), 1) << "the good one stays";
    EXPECT_TRUE(keeping.said("again: ").value_or(QString()).endsWith(QStringLiteral("second 1 of 1")))
        << keeping.output().constData();
}

}  // namespace
}  // namespace steelyard
