// The console driven from outside: what a script relies on.
#include "tests/console/club.h"

#include <QtCore/QJsonArray>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>

#include <gtest/gtest.h>

#include <set>

namespace steelyard {
namespace {

TEST_F(Club, NewMakesABookOnceAndNeverOverwrites)
{
    EXPECT_EQ(run("new").status, 0);
    const QByteArray before = test::fileBytes(m_book);
    const Said again = run("new");
    EXPECT_EQ(again.status, 1);
    EXPECT_TRUE(again.err.contains(QStringLiteral("not touched")));
    EXPECT_EQ(test::fileBytes(m_book), before);
}

TEST_F(Club, DemoIsTheSameForTheSameSeedAndSound)
{
    makeClub();
    const auto firstDump = [this] {
        auto db = test::must(Database::open(m_book, Access::ReadOnly));
        return test::rawDump(*db);
    }();
    EXPECT_EQ(run("verify").status, 0);
    ASSERT_TRUE(QFile::remove(m_book));
    makeClub();
    auto db = test::must(Database::open(m_book, Access::ReadOnly));
    EXPECT_EQ(test::rawDump(*db), firstDump);
}

TEST_F(Club, ReviewGivesEveryKeyOfTheContract)
{
    makeClub();
    const Said said = run("review", {QStringLiteral("--json")});
    ASSERT_EQ(said.status, 0) << said.err.toStdString();
    const QJsonObject json = QJsonDocument::fromJson(said.out).object();
    EXPECT_EQ(json[QStringLiteral("as_of")].toString(), QStringLiteral("2026-11-25"));
    const QJsonArray athletes = json[QStringLiteral("athletes")].toArray();
    ASSERT_EQ(athletes.size(), 3);
    const QJsonObject line = athletes[0].toObject()[QStringLiteral("lines")].toArray()[0].toObject();
    for (const char* name : {"key",
                             "exercise",
                             "variant",
                             "grip",
                             "standard",
                             "verdict",
                             "reason",
                             "since",
                             "since_earliest",
                             "since_latest",
                             "exposures",
                             "counted_share",
                             "watched_share",
                             "rate_per_week",
                             "rate_low90",
                             "rate_high90",
                             "plain_rate_per_week",
                             "weeks_to_tell",
                             "p_rising",
                             "p_falling",
                             "capacity_kg",
                             "capacity_low90_kg",
                             "capacity_high90_kg",
                             "next"})
        EXPECT_TRUE(line.contains(QLatin1StringView(name))) << name;
    EXPECT_EQ(run("review").status, 0);
}

TEST_F(Club, SheetsArePaintedAsAPdf)
{
    makeClub();
    const Said said = run("sheets", {QStringLiteral("--date"), QStringLiteral("2026-11-23"), QStringLiteral("--days"),
                                     QStringLiteral("7"), QStringLiteral("--pdf"), file("sheets.pdf")});
    ASSERT_EQ(said.status, 0) << said.err.toStdString();
    EXPECT_TRUE(test::fileBytes(file("sheets.pdf")).startsWith("%PDF-"));
}

TEST_F(Club, SheetsComeInEveryLayout)
{
    makeClub();
    const auto sheets = [&](const QStringList& more) {
        return run("sheets", QStringList{QStringLiteral("--date"), QStringLiteral("2026-11-23"),
                                         QStringLiteral("--pdf"), file("layout.pdf")}
                                 + more);
    };
    std::set<QByteArray> different;
    for (const auto* layout : {"page", "group", "week", "day"}) {
        const Said said = sheets({QStringLiteral("--layout"), QString::fromLatin1(layout)});
        ASSERT_EQ(said.status, 0) << layout << said.err.toStdString();
        different.insert(test::fileBytes(file("layout.pdf")));
    }
    EXPECT_EQ(different.size(), 4U);
    EXPECT_EQ(sheets({QStringLiteral("--layout"), QStringLiteral("poster")}).status, 2);
    EXPECT_EQ(
        sheets({QStringLiteral("--layout"), QStringLiteral("week"), QStringLiteral("--days"), QStringLiteral("3")})
            .status,
        2);
}

TEST_F(Club, AnExportComesBackAsTheSameBook)
{
    makeClub();
    ASSERT_EQ(run("export", {QStringLiteral("--to"), file("out")}).status, 0);
    const QByteArray csv = test::fileBytes(file("out/logbook.csv"));
    m_book = file("second.steelyard");
    ASSERT_EQ(run("new").status, 0);
    const Said back = run("import", {file("out")});
    ASSERT_EQ(back.status, 0) << back.err.toStdString();
    ASSERT_EQ(run("export", {QStringLiteral("--to"), file("again")}).status, 0);
    EXPECT_EQ(test::fileBytes(file("again/logbook.csv")), csv);
    EXPECT_EQ(test::fileBytes(file("again/book.json")), test::fileBytes(file("out/book.json")));
    EXPECT_EQ(run("verify").status, 0);
}

TEST_F(Club, ImportIsAllOrNothingAndTwiceIsOnce)
{
    ASSERT_EQ(run("new").status, 0);
    const QByteArray header = "date,athlete,exercise,load,unit,reps,off,rir\n";
    write(file("bad.csv"),
          header + "2026-11-02,Ada Fulcrum,Arm curl,30,kg,10,0,2\n2026-11-05,Ada Fulcrum,Arm curl,30,kg,ten,0,2\n");
    const Said refused = run("import", {file("bad.csv")});
    EXPECT_EQ(refused.status, 1);
    EXPECT_TRUE(refused.err.contains(QStringLiteral("line 3, column reps, “ten”")));
    EXPECT_TRUE(run("review", {QStringLiteral("--json")}).out.contains("\"athletes\": [\n    ]"));
    write(file("good.csv"), header + "2026-11-02,Ada Fulcrum,Arm curl,30,kg,10,0,2\n");
    EXPECT_TRUE(run("import", {file("good.csv"), QStringLiteral("--preview")}).out.contains("1 sets new"));
    EXPECT_TRUE(run("import", {file("good.csv")}).out.contains("1 sets new"));
    EXPECT_TRUE(run("import", {file("good.csv")}).out.contains("0 sets new, 1 already there"));
    const Said aside = run("import", {file("bad.csv"), QStringLiteral("--set-aside"), file("aside.csv")});
    EXPECT_EQ(aside.status, 0);
    EXPECT_TRUE(test::fileBytes(file("aside.csv")).contains("ten"));
}

struct BadRow {
    const char* column;
    const char* value;
};

// A row that is good but for one column is refused, with the line and the column named.
class EveryColumn : public Club, public testing::WithParamInterface<BadRow> {};

TEST_P(EveryColumn, RefusesWhatItCannotMean)
{
    ASSERT_EQ(run("new").status, 0);
    std::vector<std::pair<QByteArray, QByteArray>> row{
        {"date", "2026-11-02"}, {"athlete", "Ada"}, {"exercise", "Arm curl"}, {"reps", "10"}};
    const auto [column, value] = GetParam();
    const auto place = std::ranges::find(row, QByteArray(column), &std::pair<QByteArray, QByteArray>::first);
    if (place == row.end())
        row.emplace_back(column, value);
    else
        place->second = value;
    QByteArray names;
    QByteArray values;
    for (const auto& [name, text] : row) {
        names += (names.isEmpty() ? "" : ",") + name;
        values += (values.isEmpty() ? "\"" : ",\"") + text + '"';
    }
    write(file("row.csv"), names + '\n' + values + '\n');
    const Said said = run("import", {file("row.csv")});
    EXPECT_EQ(said.status, 1);
    EXPECT_TRUE(said.err.contains(QStringLiteral("line 2, column %1").arg(QString::fromLatin1(column))))
        << said.err.toStdString();
    EXPECT_TRUE(run("review", {QStringLiteral("--json")}).out.contains("\"athletes\": [\n    ]"));
}

INSTANTIATE_TEST_SUITE_P(Bad, EveryColumn,
                         testing::Values(BadRow{"date", "2026-02-30"}, BadRow{"date", ""}, BadRow{"date", "2027-01-01"},
                                         BadRow{"athlete", ""}, BadRow{"exercise", " "}, BadRow{"load", "-5"},
                                         BadRow{"load", "12,5"}, BadRow{"load", "2001"}, BadRow{"unit", "stone"},
                                         BadRow{"set", "0"}, BadRow{"set", "two"}, BadRow{"reps", ""},
                                         BadRow{"reps", "201"}, BadRow{"off", "11"}, BadRow{"off", "x"},
                                         BadRow{"failed", "2"}, BadRow{"rir", "-1"}, BadRow{"rpe", "11"},
                                         BadRow{"marks", "swing"}, BadRow{"marks", "swing:11"},
                                         BadRow{"lowering_s", "121"}, BadRow{"kind", "play"}, BadRow{"tension", "11"},
                                         BadRow{"burn", "-1"}, BadRow{"pump", "x"}, BadRow{"discomfort_elbow", "12"},
                                         BadRow{"next_soreness", "11"}, BadRow{"next_weakness", "11"}));

TEST(ConsoleWords, HaveTheRightStatusWhenTheyAreOff)
{
    EXPECT_EQ(console({}).status, 2);
    EXPECT_EQ(console({QStringLiteral("dance")}).status, 2);
    EXPECT_EQ(console({QStringLiteral("review")}).status, 2);
    EXPECT_EQ(console({QStringLiteral("review"), QStringLiteral("--colour")}).status, 2);
    EXPECT_EQ(console({QStringLiteral("--version")}).status, 0);
}

TEST_F(Club, WhatIsNoBookIsRefusedWithThree)
{
    write(m_book, "not a book at all");
    for (const char* command : {"review", "verify"}) EXPECT_EQ(run(command).status, 3) << command;
    EXPECT_EQ(test::fileBytes(m_book), QByteArray("not a book at all"));
}

TEST_F(Club, ANewerBookIsRefusedWithFour)
{
    ASSERT_EQ(run("new").status, 0);
    {
        auto db = test::must(Database::open(m_book, Access::ReadWrite));
        test::must(db->execute("PRAGMA user_version = 99"));
    }
    EXPECT_EQ(run("review").status, 4);
}

}  // namespace
}  // namespace steelyard
