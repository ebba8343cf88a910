// The file of an open book is moved, deleted or replaced by another program: a file manager, a folder that is synchronised.
#include "core/book/verify.h"
#include "core/storage/book_copy.h"
#include "core/storage/statement.h"
#include "tests/faults/keying.h"
#include "tests/support/temp_book.h"

#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::differenceFromTyped;
using test::fileBytes;
using test::must;
using test::TempBook;

class DisplacedBook : public testing::Test {
protected:
    void SetUp() override
    {
        for (int n = 1; n <= 5; ++n) must(type(n));
        elsewhere = book.file(QStringLiteral("elsewhere.steelyard"));
    }
    Result<bool> type(int n) { return test::typeSet(*book, book.line(), n); }
    void expectRefusal(int n)
    {
        const auto typed = type(n);
        ASSERT_FALSE(typed);
        EXPECT_EQ(typed.error().code, ErrorCode::Storage);
        EXPECT_TRUE(typed.error().what.contains(QStringLiteral("moved, deleted or replaced")));
        EXPECT_TRUE(typed.error().what.contains(book->path()));
    }
    TempBook book;
    QString elsewhere;
};

TEST_F(DisplacedBook, ThatWasMovedRefusesASetAndTakesItWhenItIsBack)
{
    ASSERT_TRUE(QFile::rename(book.path(), elsewhere));
    expectRefusal(6);
    EXPECT_FALSE(book->history().undo());
    ASSERT_TRUE(QFile::rename(elsewhere, book.path()));
    must(type(6));
    EXPECT_EQ(differenceFromTyped(*book, 6), "");
    book.reopen();
    EXPECT_EQ(differenceFromTyped(*book, 6), "");
}

TEST_F(DisplacedBook, ThatWasMovedHasEverythingThatWasSavedWhereItIsNow)
{
    ASSERT_TRUE(QFile::rename(book.path(), elsewhere));
    book.close();  // nobody typed anything more
    EXPECT_EQ(differenceFromTyped(*must(Book::open(elsewhere, book.clock())), 5), "");
}

TEST_F(DisplacedBook, ThatWasDeletedCanBeSavedAsACopyWithEverything)
{
    ASSERT_TRUE(QFile::remove(book.path()));
    expectRefusal(6);
    must(copyBook(book->database(), elsewhere));
    book.close();
    const auto copy = must(Book::open(elsewhere, book.clock()));
    EXPECT_EQ(differenceFromTyped(*copy, 5), "");
    EXPECT_TRUE(copy->history().canUndo());
    EXPECT_EQ(QFileInfo(elsewhere).permissions() & (QFile::ReadGroup | QFile::ReadOther), QFile::Permissions())
        << "a book holds other people's health";
}

TEST_F(DisplacedBook, ThatWasReplacedLeavesTheOtherFileAsItIs)
{
    const QString other = book.file(QStringLiteral("other.steelyard"));
    {
        const TempBook another;
        ASSERT_TRUE(QFile::copy(another.path(), other));
        // What another program puts there has been closed properly.
        must(must(Database::openWriter(other))->execute("PRAGMA wal_checkpoint(TRUNCATE)"));
    }
    const QByteArray before = fileBytes(other);
    ASSERT_TRUE(QFile::rename(book.path(), elsewhere));
    ASSERT_TRUE(QFile::rename(other, book.path()));
    expectRefusal(6);
    EXPECT_EQ(fileBytes(book.path()), before);
    const QString place = book.path();
    book.close();
    EXPECT_EQ(fileBytes(place), before);
    const auto replacement = must(Book::open(place, book.clock()));
    EXPECT_EQ(must(verifyBook(replacement->database(), {})).findings, QStringList());
    EXPECT_EQ(must(test::countSets(*replacement)), 0) << "no journal of the other book was taken for its own";
    EXPECT_EQ(differenceFromTyped(*must(Book::open(elsewhere, book.clock())), 5), "");
}

TEST_F(DisplacedBook, ThatIsReplacedInTheMiddleOfAnEditTakesNothingOfIt)
{
    {
        auto tx = must(Transaction::begin(book->database()));
        must(book->database().execute("UPDATE athlete SET name = 'Half Done'"));
        ASSERT_TRUE(QFile::rename(book.path(), elsewhere));
        EXPECT_FALSE(tx.commit());
    }
    book.close();
    const auto moved = must(Book::open(elsewhere, book.clock()));
    EXPECT_EQ(must(moved->athletes().all()).front().value.name, QStringLiteral("Ada Fulcrum"));
}

TEST(CopyOfABook, StandsWholeInThePlaceOfAnOlderOneOrLeavesThatAlone)
{
    TempBook book;
    const QString to = book.file(QStringLiteral("copy.steelyard"));
    must(copyBook(book->database(), to));
    must(test::typeSet(*book, book.line(), 1));
    must(copyBook(book->database(), to));
    EXPECT_EQ(differenceFromTyped(*must(Book::open(to, book.clock())), 1), "");
    const QString nowhere = book.file(QStringLiteral("missing/copy.steelyard"));
    EXPECT_FALSE(copyBook(book->database(), nowhere));
    EXPECT_EQ(QDir(QFileInfo(to).path()).entryList({QStringLiteral("copy.steelyard.*")}), QStringList());
}

}  // namespace
}  // namespace steelyard
