#include "core/storage/migrations.h"
#include "core/storage/statement.h"
#include "tests/support/temp_book.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::fileBytes;
using test::must;
using test::TempBook;

void writeBytes(const QString& path, const QByteArray& bytes)
{
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    ASSERT_EQ(file.write(bytes), bytes.size());
}

TEST(Database, RefusesToMakeABookOverAFile)
{
    TempBook book;
    const QString path = book.file(QStringLiteral("letter.txt"));
    writeBytes(path, "dear coach");
    const auto made = Database::create(path);
    ASSERT_FALSE(made);
    EXPECT_EQ(made.error().code, ErrorCode::Invalid);
    EXPECT_EQ(fileBytes(path), QByteArray("dear coach"));
}

TEST(Database, RefusesWhatIsNoBookAndLeavesItUntouched)
{
    TempBook book;
    const QString other = book.file(QStringLiteral("other.steelyard"));
    QByteArray stranger = QByteArray("SQLite format 3\0", 16) + QByteArray(4096 - 16, '\0');
    for (const QByteArray& bytes : {QByteArray(), QByteArray("x"), QByteArray(5000, 'z'), stranger}) {
        writeBytes(other, bytes);
        const auto opened = Database::open(other, Access::ReadWrite);
        ASSERT_FALSE(opened);
        EXPECT_EQ(opened.error().code, ErrorCode::Storage);
        EXPECT_TRUE(opened.error().what.contains(QStringLiteral("other.steelyard")));
        EXPECT_EQ(fileBytes(other), bytes);
        EXPECT_FALSE(QFileInfo::exists(other + QStringLiteral("-wal")));
    }
}

TEST(Database, RefusesAMissingFileWithoutMakingOne)
{
    TempBook book;
    const QString path = book.file(QStringLiteral("nowhere.steelyard"));
    const auto opened = Database::open(path, Access::ReadWrite);
    ASSERT_FALSE(opened);
    EXPECT_EQ(opened.error().code, ErrorCode::NotFound);
    EXPECT_FALSE(QFileInfo::exists(path));
}

TEST(Database, RefusesANewerBookWithTheVersionItNeedsAndLeavesItUntouched)
{
    TempBook book;
    must(book->database().execute("PRAGMA user_version = 99"));
    book.close();
    const QByteArray before = fileBytes(book.path());
    const auto opened = Database::open(book.path(), Access::ReadWrite);
    ASSERT_FALSE(opened);
    EXPECT_EQ(opened.error().code, ErrorCode::NewerFormat);
    EXPECT_TRUE(opened.error().what.contains(QStringLiteral("99")));
    EXPECT_EQ(fileBytes(book.path()), before);
}

TEST(Database, IsMarkedAsABookAndKeepsItsKeys)
{
    TempBook book;
    EXPECT_EQ(must(book->database().integer("PRAGMA application_id")), kApplicationId);
    EXPECT_EQ(must(book->database().integer("PRAGMA user_version")), builtInMigrations().back().version);
    EXPECT_EQ(must(book->database().integer("PRAGMA foreign_keys")), 1);
    EXPECT_EQ(
        must(book->database().integer("SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND type = 'table' "
                                      "AND strict = 0 AND name NOT LIKE 'sqlite_%'")),
        0);
    const auto orphan = book->database().execute("INSERT INTO session (athlete_id, date) VALUES (999, '2026-01-01')");
    ASSERT_FALSE(orphan);
    EXPECT_TRUE(orphan.error().detail.contains(QStringLiteral("FOREIGN KEY")));
}

TEST(Database, OnlyItsOwnerMayReadTheFile)
{
    TempBook book;
    const auto others =
        QFileDevice::ReadGroup | QFileDevice::ReadOther | QFileDevice::WriteGroup | QFileDevice::WriteOther;
    EXPECT_FALSE(QFile::permissions(book.path()) & others);
}

TEST(Book, ASecondProgramReadsAndIsToldWhoHoldsIt)
{
    TempBook book;
    const auto second = must(Book::open(book.path(), book.clock()));
    EXPECT_TRUE(second->isReadOnly());
    EXPECT_TRUE(second->holder().contains(QString::number(QCoreApplication::applicationPid())));
    EXPECT_EQ(must(second->athletes().all()).size(), 1U);
    EXPECT_FALSE(second->database().execute("DELETE FROM athlete"));
    book.close();
    const auto third = must(Book::open(book.path(), book.clock()));
    EXPECT_FALSE(third->isReadOnly());
}

TEST(Migrations, BringAnOlderBookUpToDateAndKeepACopyAside)
{
    TempBook book;
    book.close();
    auto db = must(Database::open(book.path(), Access::ReadWrite));
    auto steps = builtInMigrations();
    const int next = steps.back().version + 1;
    steps.push_back({next, "ALTER TABLE gym ADD COLUMN town TEXT; CREATE INDEX gym_town ON gym (town);"});
    const QString aside = book.file(QStringLiteral("aside.steelyard"));
    must(migrate(*db, steps, aside));
    EXPECT_EQ(must(schemaVersion(*db)), next);
    EXPECT_EQ(must(db->integer("SELECT count(*) FROM athlete WHERE name = 'Ada Fulcrum'")), 1);
    auto copy = must(Database::open(aside, Access::ReadOnly));
    EXPECT_EQ(must(schemaVersion(*copy)), next - 1);
    EXPECT_EQ(must(copy->integer("SELECT count(*) FROM athlete")), 1);
}

TEST(Migrations, AFailingStepLeavesTheBookAsItWas)
{
    TempBook book;
    auto& db = book->database();
    const QByteArray before = test::rawDump(db);
    auto steps = builtInMigrations();
    const int version = steps.back().version;
    steps.push_back({version + 1, "ALTER TABLE gym ADD COLUMN town TEXT; INSERT INTO nowhere VALUES (1);"});
    EXPECT_FALSE(migrate(db, steps, {}));
    EXPECT_EQ(must(schemaVersion(db)), version);
    EXPECT_EQ(test::rawDump(db), before);
    EXPECT_EQ(must(db.integer("PRAGMA foreign_keys")), 1);
}

TEST(Migrations, AStepThatWouldLoseALinkIsTakenBack)
{
    TempBook book;
    auto& db = book->database();
    auto steps = builtInMigrations();
    steps.push_back({steps.back().version + 1, "DELETE FROM grip;"});
    const QByteArray before = test::rawDump(db);
    EXPECT_FALSE(migrate(db, steps, {}));
    EXPECT_EQ(test::rawDump(db), before);
}

TEST(Migrations, AreNumberedWithoutGapsFromOne)
{
    int expected = 0;
    for (const Migration& step : builtInMigrations()) EXPECT_EQ(step.version, ++expected);
    EXPECT_GE(expected, 1);
}

}  // namespace
}  // namespace steelyard
