// What is arranged before a book is used, and which files are refused because they hold more than a book should, or have a journal
// beside them that isn't theirs.
#include "core/book/verify.h"
#include "core/storage/book_schema.h"
#include "core/storage/left_journal.h"
#include "core/storage/migrations.h"
#include "core/storage/statement.h"
#include "tests/support/temp_book.h"

#include <QtCore/QFile>
#include <QtCore/QFileInfo>

#include <gmock/gmock.h>
#include <sqlite3.h>

namespace steelyard {
namespace {

using test::fileBytes;
using test::must;
using test::TempBook;

// A connection without any of our arrangements, as a stranger would use it.
class Stranger {
public:
    explicit Stranger(const QString& path) { EXPECT_EQ(sqlite3_open(QFile::encodeName(path), &m_handle), SQLITE_OK); }
    ~Stranger() { sqlite3_close(m_handle); }
    Stranger(const Stranger&) = delete;
    Stranger& operator=(const Stranger&) = delete;
    void run(const QByteArray& sql)
    {
        EXPECT_EQ(sqlite3_exec(m_handle, sql.constData(), nullptr, nullptr, nullptr), SQLITE_OK)
            << sqlite3_errmsg(m_handle);
    }

private:
    sqlite3* m_handle = nullptr;
};

struct Recipe {
    const char* pragma;
    int value;
};

TEST(OpeningABook, FollowsTheWholeRecipe)
{
    TempBook book;
    Database& db = book->database();
    const Recipe recipe[] = {{"application_id", kApplicationId},
                             {"user_version", builtInMigrations().back().version},
                             {"foreign_keys", 1},
                             {"synchronous", 2},  // FULL
                             {"trusted_schema", 0},
                             {"cell_size_check", 1},
                             {"mmap_size", 0},
                             {"secure_delete", 1},
                             {"busy_timeout", 5000}};
    for (const Recipe& line : recipe)
        EXPECT_EQ(must(db.integer(std::string("PRAGMA ") + line.pragma)), line.value) << line.pragma;
    auto mode = must(db.prepare("PRAGMA journal_mode"));
    ASSERT_TRUE(must(mode.step()));
    EXPECT_EQ(mode.text(0), QStringLiteral("wal"));
    for (const int setting : {SQLITE_DBCONFIG_DEFENSIVE}) {
        int on = -1;
        sqlite3_db_config(db.handle(), setting, -1, &on);
        EXPECT_EQ(on, 1);
    }
    for (const int setting : {SQLITE_DBCONFIG_ENABLE_TRIGGER, SQLITE_DBCONFIG_ENABLE_VIEW}) {
        int on = -1;
        sqlite3_db_config(db.handle(), setting, -1, &on);
        EXPECT_EQ(on, 0);
    }
    EXPECT_EQ(sqlite3_limit(db.handle(), SQLITE_LIMIT_ATTACHED, -1), 1);
    EXPECT_LE(sqlite3_limit(db.handle(), SQLITE_LIMIT_LENGTH, -1), 256 * 1024 * 1024);
    EXPECT_LE(sqlite3_limit(db.handle(), SQLITE_LIMIT_SQL_LENGTH, -1), 1'000'000);
}

TEST(OpeningABook, RunsOnTheSqliteThatTheProgramCalls)
{
    TempBook book;
    auto st = must(book->database().prepare("SELECT sqlite_source_id()"));
    ASSERT_TRUE(must(st.step()));
    EXPECT_EQ(st.text(0), QString::fromLatin1(sqlite3_sourceid()));
}

TEST(OpeningABook, ForReadingMayWriteNothing)
{
    TempBook book;
    const auto reader = must(Database::openReader(book.path()));
    EXPECT_EQ(must(reader->integer("PRAGMA query_only")), 1);
    EXPECT_FALSE(reader->execute("DELETE FROM muscle"));
}

// Each is something that runs, or that answers in place of a table, when a book is merely used.
const char* const kForgeries[] = {
    "CREATE TRIGGER helper AFTER INSERT ON set_entry BEGIN DELETE FROM athlete; END",
    "CREATE TRIGGER sqlitehelper AFTER INSERT ON set_entry BEGIN DELETE FROM athlete; END",
    "CREATE VIEW everybody AS SELECT * FROM athlete",
    "CREATE TABLE luggage (id INTEGER PRIMARY KEY, what BLOB)",
    "CREATE VIRTUAL TABLE words USING fts5 (text)",
    "CREATE INDEX slow ON athlete (hex(zeroblob(100)))",
    "DROP INDEX set_entry_place",
    "DROP TABLE measurement; CREATE VIEW measurement AS SELECT 1 AS id",
    "ALTER TABLE athlete ADD COLUMN more TEXT",
    // As a hex editor could call one: a name that the library keeps for itself.
    "PRAGMA writable_schema = ON; INSERT INTO sqlite_schema VALUES ('trigger', 'sqlite_helper', 'set_entry', 0, "
    "'CREATE TRIGGER sqlite_helper AFTER INSERT ON set_entry BEGIN DELETE FROM athlete; END')",
};

class ForgedBook : public testing::TestWithParam<const char*> {};

TEST_P(ForgedBook, IsRefusedBeforeItIsUsedAndLeftAsItIs)
{
    TempBook book;
    book.close();
    Stranger(book.path()).run(GetParam());
    const QByteArray before = fileBytes(book.path());
    const auto opened = Book::open(book.path(), book.clock());
    ASSERT_FALSE(opened);
    EXPECT_EQ(opened.error().code, ErrorCode::Storage);
    EXPECT_FALSE(Book::openForReading(book.path(), book.clock()));
    EXPECT_EQ(fileBytes(book.path()), before);
}

INSTANTIATE_TEST_SUITE_P(All, ForgedBook, testing::ValuesIn(kForgeries));

TEST(ForgedBooks, SayWhatDoesNotBelongThere)
{
    TempBook book;
    book.close();
    Stranger(book.path()).run(kForgeries[0]);
    const auto opened = Database::open(book.path(), Access::ReadWrite);
    ASSERT_FALSE(opened);
    EXPECT_TRUE(opened.error().what.contains(QStringLiteral("parts that no Steelyard made")));
    EXPECT_TRUE(opened.error().detail.contains(QStringLiteral("trigger helper does not belong here")));
}

TEST(ForgedBooks, OfAnOlderVersionAreRefusedBeforeTheyAreBroughtUpToDate)
{
    TempBook book;
    const QString path = book.file(QStringLiteral("older.steelyard"));
    ASSERT_TRUE(QFile::copy(QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/databases/version_1.steelyard"), path));
    ASSERT_TRUE(QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner));
    Stranger(path).run("CREATE TRIGGER helper AFTER INSERT ON block BEGIN DELETE FROM athlete; END");
    const QByteArray before = fileBytes(path);
    EXPECT_FALSE(Database::open(path, Access::ReadWrite));
    EXPECT_EQ(fileBytes(path), before);
}

TEST(Schemas, DifferByNoBlanksOrQuotationMarksAroundNames)
{
    const Schema ours{{QStringLiteral("table block"), QStringLiteral("CREATE TABLE \"block\" (id INTEGER, d TEXT "
                                                                     "DEFAULT 'a b')")}};
    Schema theirs{
        {QStringLiteral("table block"), QStringLiteral("CREATE TABLE block (id INTEGER,\n d TEXT DEFAULT 'a b')")}};
    EXPECT_EQ(compareSchemas(theirs, ours), QStringList());
    theirs.begin()->second.replace(QStringLiteral("'a b'"), QStringLiteral("'ab'"));
    EXPECT_EQ(compareSchemas(theirs, ours).size(), 1);
}

// A book, and a copy of it with its journal as a sudden end leaves them: sets that stand in the journal alone.
class LeftJournal : public testing::Test {
protected:
    void SetUp() override
    {
        m_ended = m_book.file(QStringLiteral("ended.steelyard"));
        leave(m_book, m_ended);
    }
    static void leave(TempBook& book, const QString& as)
    {
        must(book->database().execute("PRAGMA wal_checkpoint(TRUNCATE)"));
        auto tx = must(Transaction::begin(book->database()));
        for (int i = 0; i < 300; ++i)
            must(book->database().execute(("INSERT INTO gym (uuid, name) VALUES ('u" + QByteArray::number(i)
                                           + "', 'Gym " + QByteArray::number(i) + "')")
                                              .constData()));
        must(tx.commit());
        ASSERT_TRUE(QFile::copy(book.path(), as));
        ASSERT_TRUE(QFile::copy(journalOf(book.path()), journalOf(as)));
    }
    static qint64 gymsIn(const QString& path)
    {
        return must(must(Database::open(path, Access::ReadWrite))->integer("SELECT count(*) FROM gym"));
    }
    void replaceJournal(const QString& by)
    {
        ASSERT_TRUE(QFile::remove(journalOf(m_ended)));
        ASSERT_TRUE(QFile::copy(by, journalOf(m_ended)));
    }
    TempBook m_book;
    QString m_ended;
};

TEST_F(LeftJournal, IsPutIntoItsBook)
{
    EXPECT_EQ(gymsIn(m_ended), 300);
    EXPECT_FALSE(hasJournal(m_ended));
}

TEST_F(LeftJournal, OfAnotherBookIsRefusedAndBothAreLeftAsTheyAre)
{
    // A book with other things in the same places.
    TempBook other;
    for (int i = 0; i < 200; ++i)
        must(other->database().execute(("INSERT INTO muscle (key, name) VALUES ('m" + QByteArray::number(i)
                                        + "', 'Muscle of a longer name " + QByteArray::number(i) + "')")
                                           .constData()));
    const QString others = other.file(QStringLiteral("others.steelyard"));
    leave(other, others);
    replaceJournal(journalOf(others));
    const QByteArray before = fileBytes(m_ended);
    const QByteArray journal = fileBytes(journalOf(m_ended));
    const auto opened = Book::open(m_ended, m_book.clock());
    ASSERT_FALSE(opened);
    EXPECT_TRUE(opened.error().what.contains(QStringLiteral("ended.steelyard-wal"))) << qPrintable(opened.error().what);
    EXPECT_EQ(fileBytes(m_ended), before);
    EXPECT_EQ(fileBytes(journalOf(m_ended)), journal);
}

TEST_F(LeftJournal, ThatIsGarbageIsPassedOver)
{
    const QString garbage = m_book.file(QStringLiteral("garbage"));
    QFile file(garbage);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(QByteArray(50'000, 'z'));
    file.close();
    replaceJournal(garbage);
    EXPECT_EQ(gymsIn(m_ended), 0) << "the book as it was without it";
}

TEST_F(LeftJournal, CutShortGivesTheBookAsItWasBeforeTheTransaction)
{
    QFile journal(journalOf(m_ended));
    ASSERT_TRUE(journal.resize(journal.size() - 100));
    EXPECT_EQ(gymsIn(m_ended), 0);
}

TEST_F(LeftJournal, OfANewerBookIsRefusedWithoutAChange)
{
    must(m_book->database().execute("PRAGMA wal_checkpoint(TRUNCATE); PRAGMA user_version = 99"));
    const QString newer = m_book.file(QStringLiteral("newer.steelyard"));
    ASSERT_TRUE(QFile::copy(m_book.path(), newer));
    ASSERT_TRUE(QFile::copy(journalOf(m_book.path()), journalOf(newer)));
    const QByteArray before = fileBytes(newer);
    const auto opened = Database::open(newer, Access::ReadWrite);
    ASSERT_FALSE(opened);
    EXPECT_EQ(opened.error().code, ErrorCode::NewerFormat);
    EXPECT_EQ(fileBytes(newer), before);
}

TEST_F(LeftJournal, WithoutItsBookIsNeitherThrownAwayNorTakenForAnotherBooks)
{
    ASSERT_TRUE(QFile::remove(m_ended));
    const QByteArray journal = fileBytes(journalOf(m_ended));
    EXPECT_EQ(Book::open(m_ended, m_book.clock()).error().code, ErrorCode::NotFound);
    const auto made = Book::create(m_ended, m_book.clock());
    ASSERT_FALSE(made);
    EXPECT_EQ(made.error().code, ErrorCode::Invalid);
    EXPECT_TRUE(made.error().what.contains(QStringLiteral("ended.steelyard-wal")));
    EXPECT_EQ(fileBytes(journalOf(m_ended)), journal);
}

// Plain file handles would: the system drops all locks of a process with the first handle on the file that it closes.
TEST(LookingAtABookThatIsOpen, LosesNoneOfItsLocks)
{
    TempBook book;
    const auto locks = [&] {
        const QByteArray inode =
            ':' + QByteArray::number(static_cast<qulonglong>(fileIdentity(book.path())->file)) + ' ';
        int found = 0;
        for (const QByteArray& line : fileBytes(QStringLiteral("/proc/locks")).split('\n'))
            found += line.contains(inode) ? 1 : 0;
        return found;
    };
    const int before = locks();
    ASSERT_GT(before, 0);
    ASSERT_TRUE(Database::open(book.path(), Access::ReadOnly));
    EXPECT_EQ(locks(), before);
}

}  // namespace
}  // namespace steelyard
