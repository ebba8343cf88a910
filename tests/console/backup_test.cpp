// Backups and restoring from outside: what a script in the night relies on.
#include "core/exchange/book_dump.h"
#include "tests/console/club.h"

#include <QtCore/QDir>
#include <QtCore/QDirIterator>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

const QByteArray kWords = "seven plain words will do\n";

class BackupClub : public Club {
protected:
    void SetUp() override { makeClub(); }
    [[nodiscard]] QByteArray content(const QString& path) const
    {
        return test::must(dumpContent(*test::must(Database::openReader(path))));
    }
    void forgetASet() const
    {
        const auto book = test::must(Database::openWriter(m_book));
        test::must(book->execute("DELETE FROM set_entry WHERE id = (SELECT max(id) FROM set_entry)"));
    }
    [[nodiscard]] QJsonObject json(const Said& said) const { return QJsonDocument::fromJson(said.out).object(); }
    [[nodiscard]] QStringList to(const char* name) const { return {QStringLiteral("--to"), file(name)}; }
    [[nodiscard]] QStringList from(const char* name) const { return {QStringLiteral("--from"), file(name)}; }
};

TEST_F(BackupClub, ABackupComesBackAndTheBookIsSetAside)
{
    const QByteArray before = content(m_book);
    ASSERT_EQ(run("backup", to("copy.steelyard")).status, 0);
    EXPECT_EQ(content(file("copy.steelyard")), before);
    forgetASet();
    const QByteArray after = content(m_book);
    const Said seen = run("restore", from("copy.steelyard") << QStringLiteral("--preview") << QStringLiteral("--json"));
    ASSERT_EQ(seen.status, 0) << seen.err.toStdString();
    EXPECT_EQ(json(seen)[QStringLiteral("athletes")].toInt(), 3);
    EXPECT_EQ(json(seen)[QStringLiteral("would_lose")].toObject()[QStringLiteral("sets")].toInt(), 0);
    EXPECT_EQ(content(m_book), after) << "a look changes nothing";
    const Said done = run("restore", from("copy.steelyard") << QStringLiteral("--json"));
    ASSERT_EQ(done.status, 0) << done.err.toStdString();
    EXPECT_EQ(content(m_book), before);
    EXPECT_EQ(content(json(done)[QStringLiteral("set_aside")].toString()), after);
    EXPECT_EQ(content(json(done)[QStringLiteral("backed_up")].toString()), after);
    EXPECT_EQ(run("verify").status, 0);
    EXPECT_TRUE(run("restore", from("copy.steelyard")).out.contains("Restored."));
}

TEST_F(BackupClub, ASealedOneNeedsThePassphraseFromStandardInput)
{
    const QByteArray before = content(m_book);
    const QStringList seal = to("out.sealed") << QStringLiteral("--encrypt");
    EXPECT_EQ(run("backup", seal).status, 2) << "no passphrase came";
    EXPECT_EQ(run("backup", seal, "short\n").status, 1);
    EXPECT_FALSE(QFile::exists(file("out.sealed")));
    const Said sealed = run("backup", seal, kWords);
    ASSERT_EQ(sealed.status, 0) << sealed.err.toStdString();
    EXPECT_FALSE(test::fileBytes(file("out.sealed")).contains("SQLite"));
    forgetASet();
    const QByteArray after = content(m_book);
    EXPECT_EQ(run("restore", from("out.sealed"), "another passphrase\n").status, 1);
    EXPECT_EQ(content(m_book), after);
    const Said done = run("restore", from("out.sealed"), kWords);
    ASSERT_EQ(done.status, 0) << done.err.toStdString();
    EXPECT_EQ(content(m_book), before);
}

TEST_F(BackupClub, OneLiftersRecordIsSealedAndOpensAsABookOfTheirs)
{
    const auto book = test::must(Book::openForReading(m_book, FixedClock(QDate(2026, 11, 25))));
    const QString name = test::must(book->athletes().all())[1].value.name;
    const QStringList seal = to("record.sealed") << QStringLiteral("--encrypt") << QStringLiteral("--athlete") << name;
    EXPECT_EQ(run("export", to("record.sealed") << QStringLiteral("--encrypt"), kWords).status, 2) << "of whom?";
    EXPECT_EQ(run("export", seal).status, 2) << "no passphrase came";
    EXPECT_FALSE(QFile::exists(file("record.sealed")));
    const Said sealed = run("export", seal, kWords);
    ASSERT_EQ(sealed.status, 0) << sealed.err.toStdString();
    EXPECT_FALSE(test::fileBytes(file("record.sealed")).contains(name.toUtf8()));
    EXPECT_EQ(run("export", seal, kWords).status, 1) << "never over a file";
    ASSERT_EQ(console({QStringLiteral("restore"), QStringLiteral("--from"), file("record.sealed"),
                       QStringLiteral("--book"), file("theirs.steelyard")},
                      file("data"), kWords)
                  .status,
              0);
    const auto theirs = test::must(Book::openForReading(file("theirs.steelyard"), FixedClock(QDate(2026, 11, 25))));
    const auto all = test::must(theirs->athletes().all());
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].value.name, name);
}

TEST_F(BackupClub, WhatCannotBeDoneIsRefusedWithTheStatusOfTheContract)
{
    EXPECT_EQ(run("backup", to("copy.steelyard")).status, 0);
    const QByteArray copy = test::fileBytes(file("copy.steelyard"));
    EXPECT_EQ(run("backup", to("copy.steelyard")).status, 1) << "never over a file";
    EXPECT_EQ(test::fileBytes(file("copy.steelyard")), copy);
    EXPECT_EQ(run("backup", {QStringLiteral("--encrypt")}).status, 2);
    EXPECT_EQ(run("restore").status, 2);
    EXPECT_EQ(run("restore", from("nowhere")).status, 1);
    EXPECT_EQ(run("backup", to("no/such/folder.steelyard")).status, 3);
    write(file("odd.steelyard"), QByteArray(5000, 'x'));
    EXPECT_EQ(run("restore", from("odd.steelyard")).status, 3);
    test::must(test::must(Database::openWriter(file("copy.steelyard")))->execute("PRAGMA user_version = 9999"));
    EXPECT_EQ(run("restore", from("copy.steelyard")).status, 4);
    m_book = file("odd.steelyard");
    EXPECT_EQ(run("backup", to("again.steelyard")).status, 3);
    EXPECT_FALSE(QFile::exists(file("again.steelyard")));
    m_book = file("nowhere.steelyard");
    EXPECT_EQ(run("backup", to("again.steelyard")).status, 1);
}

TEST_F(BackupClub, ABookThatIsOpenElsewhereCanBeBackedUpAndNotReplaced)
{
    const FixedClock clock(QDate(2026, 11, 25));
    const auto book = test::must(Book::open(m_book, clock));
    const QByteArray before = content(m_book);
    ASSERT_EQ(run("backup", to("copy.steelyard")).status, 0);
    const Said refused = run("restore", from("copy.steelyard"));
    EXPECT_EQ(refused.status, 1);
    EXPECT_TRUE(refused.err.contains(QStringLiteral("open in another program"))) << refused.err.toStdString();
    EXPECT_EQ(content(m_book), before);
}

TEST_F(BackupClub, AnImportKeepsABackupFirstThatTheListNames)
{
    const QByteArray before = content(m_book);
    EXPECT_TRUE(json(run("backup", {QStringLiteral("--list"), QStringLiteral("--json")}))[QStringLiteral("backups")]
                    .toArray()
                    .isEmpty());
    write(file("log.csv"), "date,athlete,exercise,load,unit,reps\n2026-11-20,Somebody New,Odd press,40,kg,8\n");
    EXPECT_EQ(run("import", {file("log.csv"), QStringLiteral("--preview")}).status, 0);
    ASSERT_EQ(run("import", {file("log.csv")}).status, 0);
    ASSERT_EQ(run("backup").status, 0);
    const QJsonArray rows =
        json(run("backup", {QStringLiteral("--list"), QStringLiteral("--json")}))[QStringLiteral("backups")].toArray();
    ASSERT_EQ(rows.size(), 2) << "a preview keeps none";
    EXPECT_EQ(rows[0].toObject()[QStringLiteral("reason")].toString(), QStringLiteral("asked"));
    EXPECT_EQ(rows[1].toObject()[QStringLiteral("reason")].toString(), QStringLiteral("import"));
    EXPECT_TRUE(rows[1].toObject()[QStringLiteral("sound")].toBool());
    EXPECT_EQ(content(rows[1].toObject()[QStringLiteral("file")].toString()), before);
}

}  // namespace
}  // namespace steelyard
