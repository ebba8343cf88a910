// Programs that are killed in the middle of their work, at moments that are random but the same for a seed. Three hundred kills
// unless STEELYARD_FAULT_KILLS says otherwise (packaging/faults long).
#include "core/book/verify.h"
#include "core/exchange/book_dump.h"
#include "core/storage/migrations.h"
#include "core/storage/statement.h"
#include "tests/faults/keying.h"
#include "tests/faults/keying_process.h"
#include "tests/support/temp_book.h"

#include <QtCore/QElapsedTimer>

#include <algorithm>
#include <random>

namespace steelyard {
namespace {

using test::countSets;
using test::differenceFromTyped;
using test::KeyingProcess;
using test::must;
using test::rawDump;
using test::TempBook;

// This many hundredths of all kills.
int killsOf(int share)
{
    const int wanted = qEnvironmentVariableIntValue("STEELYARD_FAULT_KILLS");
    return (wanted > 0 ? wanted : 300) * share / 100;
}

// How long the work goes on when nobody kills it: until its tenth acknowledgement. Moments are spread over twice that.
class KillMoments {
public:
    KillMoments(const QString& task, const QString& book, unsigned seed) : m_random(seed)
    {
        QElapsedTimer timer;
        timer.start();
        KeyingProcess rehearsal;
        rehearsal.start({task, book});
        for (int i = 0; i < 10; ++i) EXPECT_TRUE(rehearsal.firstLine().startsWith(QStringLiteral("acknowledged")));
        m_most = static_cast<int>(timer.nsecsElapsed() / 1000) * 2;
        rehearsal.kill();
    }
    QString next() { return QString::number(std::uniform_int_distribution<int>(1000, m_most)(m_random)); }
    // The machine has become slower than it was: it was killed before anything was done.
    void wasTooSoon() { m_most += m_most / 10; }

private:
    std::mt19937 m_random;
    int m_most = 0;
};

// A book is typed into this many times; then a new one, because what is compared grows with it.
constexpr int kKillsOfABook = 100;

struct TypingKills {
    int tried = 0;
    int inTheMiddle = 0;
};

void typeAndKill(const QString& path, const Clock& clock, KillMoments& moments, int kills, TypingKills& all)
{
    int before = must(countSets(*must(Book::open(path, clock))));
    for (int kill = 0; kill < kills; ++kill, ++all.tried) {
        SCOPED_TRACE(all.tried);
        KeyingProcess typing;
        typing.start({QStringLiteral("type"), path, QStringLiteral("--die-after"), moments.next()});
        typing.finish();
        ASSERT_TRUE(typing.wasKilled()) << typing.output().constData();
        const auto said = typing.said("acknowledged ");
        const int acknowledged = said ? said->toInt() : before;
        all.inTheMiddle += said ? 1 : 0;
        if (!said) moments.wasTooSoon();

        const auto again = must(Book::open(path, clock));
        ASSERT_FALSE(again->isReadOnly()) << "the lock of a program that is gone holds nobody up";
        const int there = must(countSets(*again));
        ASSERT_GE(there, acknowledged);
        ASSERT_LE(there, acknowledged + 1);
        ASSERT_EQ(differenceFromTyped(*again, there), "");
        if (there == 0) continue;
        const QByteArray whole = rawDump(again->database());
        must(again->history().undo());
        ASSERT_EQ(differenceFromTyped(*again, there - 1), "");
        must(again->history().redo());
        ASSERT_EQ(rawDump(again->database()), whole);
        before = there;
    }
}

TEST(ProgramKilledWhileSetsAreTyped, KeepsEveryAcknowledgedSetAndCanStillUndo)
{
    TypingKills all;
    int books = 0;
    for (int left = killsOf(66); left > 0 && !HasFatalFailure(); left -= kKillsOfABook, ++books) {
        TempBook book;
        const QString path = book.path();
        book.close();
        KillMoments moments(QStringLiteral("type"), path, static_cast<unsigned>(1 + 10 * books));
        typeAndKill(path, book.clock(), moments, std::min(left, kKillsOfABook), all);
    }
    EXPECT_EQ(all.tried, killsOf(66));
    EXPECT_GT(all.inTheMiddle, killsOf(66) / 5) << "most kills come while something is being written";
    RecordProperty("kills", all.tried);
    RecordProperty("in_the_middle", all.inTheMiddle);
    RecordProperty("books", books);
}

void importAndKill(const QString& path, const Clock& clock, KillMoments& moments, int kills)
{
    int before = must(countSets(*must(Book::open(path, clock)))) / test::kRowsAnImport;
    for (int kill = 0; kill < kills; ++kill) {
        SCOPED_TRACE(kill);
        KeyingProcess importing;
        importing.start({QStringLiteral("import"), path, QStringLiteral("--die-after"), moments.next()});
        importing.finish();
        ASSERT_TRUE(importing.wasKilled()) << importing.output().constData();
        const auto said = importing.said("acknowledged ");
        const int acknowledged = said ? said->toInt() : before;

        const auto again = must(Book::open(path, clock));
        const int sets = must(countSets(*again));
        ASSERT_EQ(sets % test::kRowsAnImport, 0);
        ASSERT_GE(sets / test::kRowsAnImport, acknowledged);
        ASSERT_LE(sets / test::kRowsAnImport, acknowledged + 1);
        ASSERT_EQ(must(verifyBook(again->database(), {})).findings, QStringList());
        if (sets == 0) continue;
        const QByteArray whole = rawDump(again->database());
        must(again->history().undo());
        ASSERT_EQ(must(countSets(*again)), sets - test::kRowsAnImport);
        must(again->history().redo());
        ASSERT_EQ(rawDump(again->database()), whole);
        before = sets / test::kRowsAnImport;
    }
}

TEST(ProgramKilledWhileItImports, HasEachFileWholeOrNotAtAllAndUndoesItAsOne)
{
    unsigned seed = 2;
    for (int left = killsOf(17); left > 0 && !HasFatalFailure(); left -= kKillsOfABook, seed += 10) {
        TempBook book;
        const QString path = book.path();
        book.close();
        KillMoments moments(QStringLiteral("import"), path, seed);
        importAndKill(path, book.clock(), moments, std::min(left, kKillsOfABook));
    }
}

TEST(ProgramKilledWhileItBringsABookUpToDate, LeavesOneThatTheNextStartBringsUpToDate)
{
    const QString oldest = QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/databases/version_1.steelyard");
    const FixedClock clock(QDate(2026, 3, 2));
    const QTemporaryDir folder;
    const auto copyTo = [&](const QString& name) {
        const QString path = folder.filePath(name);
        EXPECT_TRUE(QFile::copy(oldest, path));
        EXPECT_TRUE(QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner));
        return path;
    };
    const QByteArray expected =
        must(dumpContent(must(Book::open(copyTo(QStringLiteral("whole.steelyard")), clock))->database()));
    QElapsedTimer timer;
    timer.start();
    KeyingProcess rehearsal;
    rehearsal.start({QStringLiteral("open"), copyTo(QStringLiteral("rehearsal.steelyard"))});
    rehearsal.finish();
    int whole = static_cast<int>(timer.nsecsElapsed() / 1000);
    std::mt19937 random(3);
    int killed = 0;
    for (int kill = 0; killed < killsOf(17) && kill < 10 * killsOf(17); ++kill) {
        const QString path = copyTo(QStringLiteral("book%1.steelyard").arg(kill));
        KeyingProcess opening;
        opening.start({QStringLiteral("open"), path, QStringLiteral("--die-after"),
                       QString::number(std::uniform_int_distribution<int>(whole / 5, whole)(random))});
        opening.finish();
        killed += opening.wasKilled() ? 1 : 0;
        if (!opening.wasKilled()) whole = whole * 4 / 5;  // the machine has become faster than it was
        const auto again = Book::open(path, clock);
        ASSERT_TRUE(again) << qPrintable(again.error().what + again.error().detail) << " kill " << kill;
        ASSERT_EQ(must(verifyBook((*again)->database(), {})).findings, QStringList()) << "kill " << kill;
        ASSERT_EQ(must(dumpContent((*again)->database())), expected) << "kill " << kill;
    }
    EXPECT_EQ(killed, killsOf(17));
}

}  // namespace
}  // namespace steelyard
