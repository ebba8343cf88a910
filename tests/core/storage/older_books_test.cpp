// Books that earlier versions wrote, kept as they were written. Each must open in this program with all its content.
#include "core/book/book.h"
#include "core/book/verify.h"
#include "core/exchange/book_dump.h"
#include "core/storage/migrations.h"
#include "tests/support/temp_book.h"

#include <QtCore/QDir>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;

QDir olderBooks()
{
    return QDir(QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/databases"));
}

struct DumpRow {
    QByteArray table;
    QJsonObject columns;
};

std::vector<DumpRow> rowsOf(const QByteArray& dump)
{
    std::vector<DumpRow> rows;
    for (const QByteArray& line : dump.split('\n')) {
        const qsizetype gap = line.indexOf(' ');
        if (gap > 0) rows.push_back({line.left(gap), QJsonDocument::fromJson(line.mid(gap + 1)).object()});
    }
    return rows;
}

// A later version may add columns; what stood there must still stand.
bool holds(const QJsonObject& now, const QJsonObject& then)
{
    for (auto column = then.begin(); column != then.end(); ++column)
        if (now.value(column.key()) != column.value()) return false;
    return true;
}

TEST(OlderBooks, AreKeptForEveryVersionThereWas)
{
    for (int version = 1; version <= builtInMigrations().back().version; ++version)
        for (const char* suffix : {"steelyard", "jsonl"})
            EXPECT_TRUE(olderBooks().exists(QStringLiteral("version_%1.%2").arg(version).arg(QLatin1String(suffix))))
                << version << ' ' << suffix;
}

TEST(OlderBooks, OpenWithEverythingThatWasInThem)
{
    const QStringList books = olderBooks().entryList({QStringLiteral("*.steelyard")}, QDir::Files);
    ASSERT_FALSE(books.isEmpty());
    const FixedClock clock(QDate(2026, 3, 2));
    for (const QString& name : books) {
        const QTemporaryDir folder;
        const QString path = folder.filePath(name);
        ASSERT_TRUE(QFile::copy(olderBooks().filePath(name), path));
        ASSERT_TRUE(QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner));
        const auto book = must(Book::open(path, clock));
        EXPECT_EQ(must(schemaVersion(book->database())), builtInMigrations().back().version);
        EXPECT_EQ(must(verifyBook(book->database(), {})).findings, QStringList()) << qPrintable(name);

        QFile written(
            olderBooks().filePath(QString(name).replace(QStringLiteral(".steelyard"), QStringLiteral(".jsonl"))));
        ASSERT_TRUE(written.open(QIODevice::ReadOnly));
        const auto then = rowsOf(written.readAll());
        const auto now = rowsOf(must(dumpContent(book->database())));
        ASSERT_GT(then.size(), 40U);
        for (const DumpRow& row : then)
            EXPECT_TRUE(std::ranges::any_of(
                now, [&](const DumpRow& each) { return each.table == row.table && holds(each.columns, row.columns); }))
                << qPrintable(name) << ' ' << row.table.constData() << ' '
                << QJsonDocument(row.columns).toJson(QJsonDocument::Compact).constData();
    }
}

TEST(OlderBooks, KeepHealthEntriesAsToBeConfirmedWhereNobodyHadAsked)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("old.steelyard"));
    ASSERT_TRUE(QFile::copy(olderBooks().filePath(QStringLiteral("version_9.steelyard")), path));
    ASSERT_TRUE(QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner));
    const FixedClock clock(QDate(2026, 3, 2));
    const auto book = must(Book::open(path, clock));
    const auto athletes = must(book->athletes().all());
    ASSERT_EQ(athletes.size(), 2U);
    for (const auto& athlete : athletes) {
        EXPECT_EQ(athlete.value.consents, HealthConsents{HealthConsent::toConfirm()});
        EXPECT_TRUE(validate(athlete.value, clock.today()).empty());
        EXPECT_FALSE(athlete.value.jointHistory.isEmpty());
    }
}

TEST(OlderBooks, AreBroughtUpToDateByThoseWhoOnlyRead)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("old.steelyard"));
    ASSERT_TRUE(QFile::copy(olderBooks().filePath(QStringLiteral("version_1.steelyard")), path));
    ASSERT_TRUE(QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner));
    const FixedClock clock(QDate(2026, 3, 2));
    EXPECT_TRUE(must(Database::isOlder(path)));
    {
        const auto book = must(Book::openForReading(path, clock));
        EXPECT_FALSE(must(book->athletes().all()).empty());
    }
    EXPECT_FALSE(must(Database::isOlder(path)));
}

}  // namespace
}  // namespace steelyard
