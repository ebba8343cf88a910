#include "tests/console/club.h"

#include <QtCore/QJsonArray>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

class ErasingClub : public Club {
protected:
    [[nodiscard]] QStringList names() const
    {
        const auto book = test::must(Book::openForReading(m_book, FixedClock(QDate(2026, 11, 25))));
        QStringList names;
        for (const auto& row : test::must(book->athletes().all())) names.append(row.value.name);
        return names;
    }
    [[nodiscard]] static QJsonObject json(const Said& said) { return QJsonDocument::fromJson(said.out).object(); }
};

TEST_F(ErasingClub, WithoutConfirmItOnlySaysWhatWouldGo)
{
    makeClub();
    const QStringList before = names();
    const QByteArray bytes = test::fileBytes(m_book);
    const Said said = run("erase", {QStringLiteral("--athlete"), before[0]});
    EXPECT_EQ(said.status, 0) << said.err.toStdString();
    EXPECT_TRUE(said.out.contains("This would be erased:")) << said.out.toStdString();
    EXPECT_TRUE(said.out.contains("Sets: ")) << said.out.toStdString();
    EXPECT_EQ(names(), before);
    EXPECT_EQ(test::fileBytes(m_book), bytes);
}

TEST_F(ErasingClub, ItTakesTheOneThatIsNamedTwiceAndNoOther)
{
    makeClub();
    const QStringList before = names();
    const Said said = run("erase", {QStringLiteral("--athlete"), before[1], QStringLiteral("--confirm"), before[1],
                                    QStringLiteral("--json")});
    EXPECT_EQ(said.status, 0) << said.err.toStdString();
    EXPECT_EQ(json(said)[QStringLiteral("erased")], true);
    EXPECT_EQ(json(said)[QStringLiteral("file_cleaned")], true);
    EXPECT_EQ(json(said)[QStringLiteral("files_still_naming")].toArray(), QJsonArray());
    EXPECT_GT(json(said)[QStringLiteral("rows")].toObject()[QStringLiteral("set_entry")].toInt(), 50);
    EXPECT_EQ(names(), (QStringList{before[0], before[2]}));
    EXPECT_FALSE(test::fileBytes(m_book).contains(before[1].toUtf8()));
    EXPECT_EQ(run("verify").status, 0);
    EXPECT_EQ(run("erase", {QStringLiteral("--athlete"), before[1], QStringLiteral("--confirm"), before[1]}).status, 1);
}

TEST_F(ErasingClub, ANameThatIsNotTheSameTwiceErasesNobody)
{
    makeClub();
    const QStringList before = names();
    const Said said = run("erase", {QStringLiteral("--athlete"), before[0], QStringLiteral("--confirm"), before[1]});
    EXPECT_EQ(said.status, 1);
    EXPECT_FALSE(said.err.isEmpty());
    EXPECT_EQ(names(), before);
}

TEST_F(ErasingClub, CallsThatAreOffHaveTheStatusOfTheirKind)
{
    makeClub();
    EXPECT_EQ(run("erase").status, 2);
    EXPECT_EQ(run("erase", {QStringLiteral("--athlete"), QStringLiteral("Nobody")}).status, 1);
    write(m_book, "no book at all");
    EXPECT_EQ(run("erase", {QStringLiteral("--athlete"), QStringLiteral("Nobody")}).status, 3);
}

TEST_F(ErasingClub, ABackupOfBeforeLosesThemAgainEvenWhenTheBookIsLost)
{
    makeClub();
    const QStringList before = names();
    const QString backup = file("before.steelyard");
    ASSERT_EQ(run("backup", {QStringLiteral("--to"), backup}).status, 0);
    ASSERT_EQ(run("erase", {QStringLiteral("--athlete"), before[0], QStringLiteral("--confirm"), before[0]}).status, 0);
    for (const QString& path : {m_book, m_book + QStringLiteral("-wal"), m_book + QStringLiteral("-shm")})
        QFile::remove(path);
    const Said said = run("restore", {QStringLiteral("--from"), backup});
    EXPECT_EQ(said.status, 0) << said.err.toStdString();
    EXPECT_EQ(names(), (QStringList{before[1], before[2]}));
    EXPECT_FALSE(test::fileBytes(m_book).contains(before[0].toUtf8()));
}

TEST_F(ErasingClub, ABackupThatComesBackElsewhereLosesThemTooButARecordOfTheirOwnOpens)
{
    makeClub();
    const QStringList before = names();
    const QString backup = file("before.steelyard");
    ASSERT_EQ(run("backup", {QStringLiteral("--to"), backup}).status, 0);
    ASSERT_EQ(run("export",
                  {QStringLiteral("--to"), file("record.sealed"), QStringLiteral("--encrypt"),
                   QStringLiteral("--athlete"), before[0]},
                  "seven plain words will do\n")
                  .status,
              0);
    ASSERT_EQ(run("erase", {QStringLiteral("--athlete"), before[0], QStringLiteral("--confirm"), before[0]}).status, 0);
    const QString here = m_book;
    m_book = file("elsewhere.steelyard");
    ASSERT_EQ(run("restore", {QStringLiteral("--from"), backup}).status, 0);
    EXPECT_EQ(names(), (QStringList{before[1], before[2]}));
    EXPECT_FALSE(test::fileBytes(m_book).contains(before[0].toUtf8()));
    m_book = file("theirs.steelyard");
    ASSERT_EQ(run("restore", {QStringLiteral("--from"), file("record.sealed")}, "seven plain words will do\n").status,
              0);
    EXPECT_EQ(names(), QStringList{before[0]}) << "somebody was handed over";
    m_book = here;
    EXPECT_EQ(names(), (QStringList{before[1], before[2]}));
}

TEST_F(ErasingClub, SaysWhichCopyBesideTheBookStillHasThem)
{
    makeClub();
    const QStringList before = names();
    const QString copy = m_book + QStringLiteral(".before-restore-1");
    ASSERT_TRUE(QFile::copy(m_book, copy));
    const Said said = run("erase", {QStringLiteral("--athlete"), before[0], QStringLiteral("--confirm"), before[0],
                                    QStringLiteral("--json")});
    const QJsonArray copies = json(said)[QStringLiteral("copies")].toArray();
    ASSERT_EQ(copies.size(), 2) << "and the backup of just before";
    EXPECT_EQ(copies[0].toString(), copy);
    EXPECT_TRUE(copies[1].toString().endsWith(QStringLiteral("-erase.steelyard")));
}

TEST_F(ErasingClub, ABackupOfJustBeforeHasEverybodyAndLosesThemWhenItIsRestored)
{
    makeClub();
    const QStringList before = names();
    ASSERT_EQ(run("erase", {QStringLiteral("--athlete"), before[0], QStringLiteral("--confirm"), before[0]}).status, 0);
    const Said list = run("backup", {QStringLiteral("--list"), QStringLiteral("--json")});
    const QJsonObject backup = json(list)[QStringLiteral("backups")].toArray().first().toObject();
    EXPECT_EQ(backup[QStringLiteral("reason")], QStringLiteral("erase"));
    const QString path = backup[QStringLiteral("file")].toString();
    const auto kept = test::must(Book::openForReading(path, FixedClock(QDate(2026, 11, 25))));
    EXPECT_TRUE(kept->athletes().findByName(before[0]));
    ASSERT_EQ(run("restore", {QStringLiteral("--from"), path}).status, 0);
    EXPECT_EQ(names(), (QStringList{before[1], before[2]}));
}

}  // namespace
}  // namespace steelyard
