// One lifter goes without a trace, and nobody else notices.
#include "core/care/erasure.h"

#include "core/book/verify.h"
#include "core/care/erasure_words.h"
#include "core/domain/consent.h"
#include "core/edits/edits.h"
#include "core/exchange/book_dump.h"
#include "core/exchange/book_export.h"
#include "core/storage/book_copy.h"
#include "core/storage/statement.h"
#include "tests/support/full_book.h"
#include "tests/support/temp_book.h"
#include "tests/support/temp_dir.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using testing_support::TempDir;

class Erasure : public testing::Test {
protected:
    Erasure() : m_book(must(Book::create(path(), m_clock)))
    {
        test::fillFullBook(*m_book);
        renameMentions();
        m_first = must(m_book->athletes().findByName(test::kFirstLifter));
        m_second = must(m_book->athletes().findByName(test::kSecondLifter));
    }

    [[nodiscard]] QString path() const { return m_dir.path(u"club.steelyard"); }
    [[nodiscard]] Database& db() const { return m_book->database(); }
    [[nodiscard]] PersonTraces tracesOfFirst() const { return {m_first.value.name, m_first.uuid}; }
    // The full book names its gyms and templates after the lifters, which makes them mentions in what is nobody's.
    void renameMentions()
    {
        must(
            db().execute("UPDATE gym SET name = 'Gym ' || id; UPDATE block SET name = 'Shape ' || id "
                         "WHERE athlete_id IS NULL"));
    }
    void edit(Id<Athlete> athlete, const QString& note)
    {
        Athlete changed = must(m_book->athletes().find(athlete)).value;
        changed.note = note;
        EXPECT_TRUE(must(m_book->history().perform(changeAthlete(athlete, changed))));
    }
    [[nodiscard]] QByteArray exported(Id<Athlete> athlete, QStringView folder)
    {
        must(exportBook(db(), m_dir.path(folder), athlete, {}));
        const QString inside = folder.toString() + u'/';
        return m_dir.read(inside + QStringLiteral("book.json")) + m_dir.read(inside + QStringLiteral("logbook.csv"))
               + m_dir.read(inside + QStringLiteral("README.txt"));
    }
    [[nodiscard]] std::int64_t number(const char* sql) const { return must(db().integer(sql)); }
    [[nodiscard]] QStringList linesOf(const ErasurePlan& plan) const { return erasureLines(plan.counts); }

    TempDir m_dir;
    FixedClock m_clock{QDate(2026, 3, 2)};
    std::unique_ptr<Book> m_book;
    Row<Athlete> m_first{Id<Athlete>(0), {}, {}};
    Row<Athlete> m_second{Id<Athlete>(0), {}, {}};
};

TEST_F(Erasure, IsPlannedByKindAndChangesNothing)
{
    const QByteArray before = must(dumpContent(db()));
    const auto plan = must(planErasure(db(), m_first.id));
    const QStringList lines = linesOf(plan);
    for (const char* line : {"Profile: 1", "Sessions: 4", "Sets: 10", "Former values of sets: 8", "Lift lines: 2",
                             "Decisions: 2", "Blocks: 1", "Trials: 2", "Tags: 2", "Records of consent: 2"})
        EXPECT_TRUE(lines.contains(QLatin1StringView(line))) << line << " in " << qPrintable(lines.join(u'\n'));
    EXPECT_EQ(must(dumpContent(db())), before);
}

TEST_F(Erasure, TakesEveryRowThatTheSchemaTiesToTheLifter)
{
    const auto plan = must(planErasure(db(), m_first.id));
    const std::int64_t second = must(planErasure(db(), m_second.id)).rows();
    const auto report = must(eraseAthlete(*m_book, m_first.id));
    EXPECT_EQ(report.counts, plan.counts);
    EXPECT_TRUE(report.fileCleaned) << qPrintable(report.why);
    EXPECT_EQ(must(planErasure(db(), m_second.id)).rows(), second);
    EXPECT_EQ(must(m_book->athletes()
                       .find(m_first.id)
                       .map([](const auto&) { return true; })
                       .or_else([](const Error& error) -> Result<bool> {
                           EXPECT_EQ(error.code, ErrorCode::NotFound);
                           return false;
                       })),
              false);
    EXPECT_EQ(must(verifyBook(db(), {})).findings, QStringList());
}

TEST_F(Erasure, LeavesOthersRecordsAsTheyAre)
{
    const QByteArray before = exported(m_second.id, u"before");
    must(eraseAthlete(*m_book, m_first.id));
    EXPECT_EQ(exported(m_second.id, u"after"), before);
}

TEST_F(Erasure, LeavesNothingOfThemInAnyByteOfTheFiles)
{
    edit(m_first.id, test::kFirstLifter + QStringLiteral(" came late"));
    edit(m_second.id, QStringLiteral("fine"));
    must(m_book->history().undo());
    const auto lines = must(m_book->logbook().lines(m_first.id));
    m_book.reset();
    ASSERT_FALSE(must(filesNaming(path(), tracesOfFirst())).isEmpty());  // the scan finds them while they are there

    m_book = must(Book::open(path(), m_clock));
    must(eraseAthlete(*m_book, m_first.id));
    // While the book is open: nobody else of this process has it, so the plain handles of the scan are let be.
    EXPECT_EQ(QFileInfo(path() + QStringLiteral("-wal")).size(), 0);
    m_book.reset();
    EXPECT_EQ(must(filesNaming(path(), tracesOfFirst())), QStringList());
    for (const auto& line : lines)
        EXPECT_EQ(must(filesNaming(path(), {m_first.value.jointHistory + QStringLiteral("-"), line.uuid})),
                  QStringList());
    const QByteArray bytes = test::fileBytes(path());
    EXPECT_FALSE(bytes.contains("cmd()"));
    EXPECT_TRUE(bytes.contains("Lifter"));  // the other one
}

TEST_F(Erasure, EndsTheHistorySoThatNoStepBringsThemBack)
{
    edit(m_first.id, QStringLiteral("late"));
    ASSERT_TRUE(m_book->history().canUndo());
    EXPECT_EQ(must(planErasure(db(), m_first.id)).stepsForgotten, 1);
    must(eraseAthlete(*m_book, m_first.id));
    EXPECT_FALSE(m_book->history().canUndo());
    EXPECT_FALSE(m_book->history().canRedo());
    EXPECT_EQ(number("SELECT count(*) FROM edit_step"), 0);
    m_book.reset();
    m_book = must(Book::open(path(), m_clock));
    EXPECT_FALSE(m_book->history().canUndo());
}

TEST_F(Erasure, KeepsAMarkWithoutNameOrUuid)
{
    must(eraseAthlete(*m_book, m_first.id));
    const auto erased = must(erasedAthletes(db()));
    ASSERT_EQ(erased.size(), 2U);  // the full book has one of earlier
    EXPECT_EQ(erased.back().mark, erasureMark(m_first.uuid));
    EXPECT_NE(erased.back().mark, m_first.uuid);
    EXPECT_EQ(erased.back().at, m_clock.nowUtc());
}

TEST_F(Erasure, IsDoneAgainInABookThatComesBackFromABackup)
{
    const QString backup = m_dir.path(u"backup.steelyard");
    must(copyBook(db(), backup));
    must(eraseAthlete(*m_book, m_first.id));
    const auto erased = must(erasedAthletes(db()));
    m_book.reset();

    m_book = must(Book::open(backup, m_clock));
    EXPECT_EQ(must(eraseAgain(*m_book, erased)), 1);
    EXPECT_EQ(must(erasedAthletes(db())), erased);
    EXPECT_EQ(must(eraseAgain(*m_book, erased)), 0);
    EXPECT_TRUE(m_book->athletes().find(m_second.id));
    m_book.reset();
    EXPECT_EQ(must(filesNaming(backup, tracesOfFirst())), QStringList());
}

TEST_F(Erasure, KnowsWhichCopiesStillHoldThem)
{
    const QString with = m_dir.path(u"club.steelyard.before-version-10");
    const QString without = m_dir.path(u"club.steelyard.before-restore-2");
    must(copyBook(db(), with));
    must(eraseAthlete(*m_book, m_first.id));
    must(copyBook(db(), without));
    const QString noBook = m_dir.write(u"club.steelyard.before-lunch", "no book");
    const QString old = m_dir.path(u"old");
    ASSERT_TRUE(QFile::copy(QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/databases/version_1.steelyard"), old));
    const QUuid mark = erasureMark(m_first.uuid);
    EXPECT_EQ(copiesHolding({with, without, noBook, old, m_dir.path(u"gone")}, mark),
              (std::vector<CopyFinding>{{with, CopyState::Holds},
                                        {without, CopyState::Free},
                                        {noBook, CopyState::CantTell},
                                        {old, CopyState::Free},
                                        {m_dir.path(u"gone"), CopyState::CantTell}}));
    EXPECT_EQ(copiesBeside(path()), (QStringList{noBook, without, with}));
}

TEST_F(Erasure, SaysWhereTheNameStaysInWhatIsNotTheirs)
{
    EXPECT_TRUE(must(planErasure(db(), m_second.id)).mentions.empty());
    edit(m_first.id, QStringLiteral("Spots for ") + test::kSecondLifter + QStringLiteral(". Later again."));
    must(db().execute("UPDATE gym SET name = '''x \"Two\", Lifters' WHERE id = 1"));  // another word
    const auto mentions = must(planErasure(db(), m_second.id)).mentions;
    ASSERT_EQ(mentions.size(), 1U);
    EXPECT_EQ(mentions.front().table, "athlete");
    EXPECT_TRUE(mentionLine(mentions.front()).startsWith(QStringLiteral("another lifter's profile: Spots")));
    must(eraseAthlete(*m_book, m_second.id));
    m_book.reset();
    EXPECT_EQ(must(filesNaming(path(), {m_second.value.name, m_second.uuid})), QStringList{path()});
}

TEST_F(Erasure, LeavesAStandardToThoseWhoLiftByIt)
{
    auto borrowed = must(m_book->logbook().lines(m_first.id)).front().value;  // by a standard agreed with the first
    borrowed.athlete = m_second.id;
    {
        auto tx = must(Transaction::begin(db()));
        const auto line = must(m_book->logbook().line(tx, borrowed));
        const auto session = must(m_book->logbook().session(tx, m_second.id, QDate(2026, 2, 20)));
        must(m_book->logbook().insert(tx, m_second.id, {session, line, 1, test::fullSet(1)}));
        must(tx.commit());
    }
    const std::int64_t sets = number("SELECT count(*) FROM set_entry");
    must(eraseAthlete(*m_book, m_first.id));
    EXPECT_EQ(number("SELECT count(*) FROM set_entry"), sets - 10);
    EXPECT_EQ(number("SELECT count(*) FROM rep_standard WHERE name LIKE 'kept standard%' AND athlete_id IS NULL"), 1);
    EXPECT_EQ(must(verifyBook(db(), {})).findings, QStringList());
    m_book.reset();
    EXPECT_EQ(must(filesNaming(path(), tracesOfFirst())), QStringList());
}

TEST_F(Erasure, IsRefusedWhereTheBookCanOnlyBeRead)
{
    const auto second = must(Book::open(path(), m_clock));
    ASSERT_TRUE(second->isReadOnly());
    const auto erased = eraseAthlete(*second, m_first.id);
    ASSERT_FALSE(erased);
    EXPECT_EQ(erased.error().code, ErrorCode::Storage);
    EXPECT_TRUE(m_book->athletes().find(m_first.id));
}

TEST_F(Erasure, SaysWhenAReaderKeepsTheJournalFromBeingEmptied)
{
    must(db().execute("PRAGMA busy_timeout = 50"));
    auto reader = must(Database::openReader(path()));
    must(reader->execute("BEGIN; SELECT count(*) FROM athlete;"));
    const auto report = must(eraseAthlete(*m_book, m_first.id));
    EXPECT_FALSE(report.fileCleaned);
    EXPECT_FALSE(report.why.isEmpty());
    must(reader->execute("COMMIT"));
    reader.reset();
    m_book.reset();
    EXPECT_EQ(must(filesNaming(path(), tracesOfFirst())), QStringList());
}

}  // namespace
}  // namespace steelyard
