#include "core/storage/book_swap.h"

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "core/storage/book_copy.h"
#include "tests/support/temp_book.h"

#include <QtCore/QDir>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;
using test::workSet;

const QDateTime kMoment(QDate(2026, 3, 2), QTime(12, 0), Qt::UTC);
const QString kReady = QStringLiteral(".ready-20260302T120000Z");
const QString kAside = QStringLiteral(".before-restore-20260302T120000Z");

// A book of one set, and beside it an earlier copy of it that has none.
class BookInThePlaceOfAnother : public testing::Test {
protected:
    BookInThePlaceOfAnother()
    {
        must(copyBook(m_book->database(), earlier()));
        must(m_book->history().perform(addSet(m_book.line(), QDate(2026, 3, 2), workSet("40", 8))));
    }
    [[nodiscard]] QString earlier() const { return m_book.path() + QStringLiteral(".restoring"); }
    [[nodiscard]] int setsIn(const QString& path) const
    {
        return static_cast<int>(
            must(must(Book::open(path, m_book.clock()))->database().integer("SELECT count(*) FROM set_entry")));
    }
    // As a program leaves them that is killed with the set in the journal alone.
    void leaveAJournal()
    {
        const QString copy = m_book.file(QStringLiteral("killed"));
        for (const auto* ending : {"", "-wal"})
            ASSERT_TRUE(QFile::copy(m_book.path() + QString::fromLatin1(ending), copy + QString::fromLatin1(ending)));
        m_book.close();
        for (const auto* ending : {"", "-wal"}) {
            QFile::remove(m_book.path() + QString::fromLatin1(ending));
            ASSERT_TRUE(QFile::rename(copy + QString::fromLatin1(ending), m_book.path() + QString::fromLatin1(ending)));
        }
        ASSERT_GT(QFileInfo(m_book.path() + QStringLiteral("-wal")).size(), 0);
    }
    [[nodiscard]] QString here(const QString& ending) const { return m_book.path() + ending; }
    TempBook m_book;
};

TEST_F(BookInThePlaceOfAnother, SetsTheOtherAsideWholeWithItsJournal)
{
    leaveAJournal();
    EXPECT_EQ(must(putInPlace(m_book.path(), earlier(), kMoment)), here(kAside));
    EXPECT_FALSE(QFile::exists(here(QStringLiteral("-wal"))));
    EXPECT_TRUE(QFile::exists(here(kAside + QStringLiteral("-wal"))));
    EXPECT_FALSE(QFile::exists(earlier()));
    EXPECT_EQ(setsIn(m_book.path()), 0);
    EXPECT_EQ(setsIn(here(kAside)), 1);
}

TEST_F(BookInThePlaceOfAnother, SaysThatThereWasNone)
{
    m_book.close();
    ASSERT_TRUE(QFile::remove(m_book.path()));
    EXPECT_EQ(must(putInPlace(m_book.path(), earlier(), kMoment)), QString());
    EXPECT_EQ(setsIn(m_book.path()), 0);
}

TEST_F(BookInThePlaceOfAnother, NeverTakesTheNameOfOneSetAsideBefore)
{
    m_book.close();
    const QString second = m_book.file(QStringLiteral("second"));
    ASSERT_TRUE(QFile::copy(earlier(), second));
    must(putInPlace(m_book.path(), earlier(), kMoment));
    EXPECT_EQ(must(putInPlace(m_book.path(), second, kMoment)), here(kAside + QStringLiteral("-2")));
    EXPECT_EQ(setsIn(here(kAside)), 1);
}

// Every state in which a program can end, made by hand; the next opening goes on from there.
class CutOffWhileTakingThePlace : public BookInThePlaceOfAnother {
protected:
    void SetUp() override
    {
        leaveAJournal();
        ASSERT_TRUE(QFile::rename(earlier(), here(kReady)));
    }
    void expectItIsDone()
    {
        EXPECT_TRUE(isHalfPutInPlace(m_book.path()));
        EXPECT_EQ(setsIn(m_book.path()), 0);
        EXPECT_FALSE(isHalfPutInPlace(m_book.path()));
        EXPECT_EQ(setsIn(here(kAside)), 1);
    }
};

TEST_F(CutOffWhileTakingThePlace, BeforeTheOldOneHasASecondName)
{
    expectItIsDone();
}

TEST_F(CutOffWhileTakingThePlace, BeforeTheJournalFollowsIt)
{
    ASSERT_TRUE(QFile::copy(m_book.path(), here(kAside)));
    expectItIsDone();
}

TEST_F(CutOffWhileTakingThePlace, BeforeTheNewOneHasItsName)
{
    ASSERT_TRUE(QFile::copy(m_book.path(), here(kAside)));
    ASSERT_TRUE(QFile::rename(here(QStringLiteral("-wal")), here(kAside + QStringLiteral("-wal"))));
    expectItIsDone();
}

TEST_F(CutOffWhileTakingThePlace, WhereNoFileCanHaveTwoNamesAndNoneIsInThePlace)
{
    ASSERT_TRUE(QFile::rename(m_book.path(), here(kAside)));
    ASSERT_TRUE(QFile::rename(here(QStringLiteral("-wal")), here(kAside + QStringLiteral("-wal"))));
    expectItIsDone();
}

TEST_F(CutOffWhileTakingThePlace, IsDoneBeforeAnybodyReads)
{
    ASSERT_TRUE(QFile::rename(m_book.path(), here(kAside)));
    const auto book = must(Book::openForReading(m_book.path(), m_book.clock()));
    EXPECT_EQ(must(book->database().integer("SELECT count(*) FROM set_entry")), 0);
}

TEST_F(CutOffWhileTakingThePlace, ThroughALinkIsDoneBesideTheBookItself)
{
    const QString link = m_book.file(QStringLiteral("link/club.steelyard"));
    ASSERT_TRUE(QDir().mkpath(QFileInfo(link).path()));
    ASSERT_TRUE(QFile::link(m_book.path(), link));
    EXPECT_EQ(setsIn(link), 0);
    EXPECT_EQ(setsIn(here(kAside)), 1);
    EXPECT_TRUE(QFileInfo(link).isSymLink());
}

}  // namespace
}  // namespace steelyard
