// What was trained doesn't depend on how its rows were handed in.
#include "tests/console/club.h"

#include <algorithm>
#include <random>

namespace steelyard {
namespace {

class ImportOrder : public Club {
protected:
    // The club's logbook as CSV: header, then rows.
    QByteArrayList exportedRows()
    {
        makeClub();
        EXPECT_EQ(run("export", {QStringLiteral("--to"), file("out")}).status, 0);
        QFile csv(file("out/logbook.csv"));
        EXPECT_TRUE(csv.open(QIODevice::ReadOnly));
        QByteArrayList rows = csv.readAll().split('\n');
        while (!rows.isEmpty() && rows.back().trimmed().isEmpty()) rows.pop_back();
        return rows;
    }
    void import(const QString& book, const QString& csv)
    {
        const Said said = console({QStringLiteral("import"), QStringLiteral("--book"), book, csv});
        EXPECT_EQ(said.status, 0) << said.err.toStdString();
    }
    QByteArray importedReview(const char* book, const QByteArrayList& rows, int times = 1)
    {
        const QString csv = file("rows.csv");
        const QString path = file(book);
        write(csv, rows.join('\n') + '\n');
        EXPECT_EQ(console({QStringLiteral("new"), QStringLiteral("--book"), path}).status, 0);
        for (int i = 0; i < times; ++i) import(path, csv);
        const Said said = console({QStringLiteral("review"), QStringLiteral("--book"), path, QStringLiteral("--as-of"),
                                   QStringLiteral("2026-11-25"), QStringLiteral("--json")});
        EXPECT_EQ(said.status, 0) << said.err.toStdString();
        return QByteArray(said.out).replace(path.toUtf8(), "book");
    }
};

TEST_F(ImportOrder, OfRowsChangesNoReading)
{
    QByteArrayList rows = exportedRows();
    ASSERT_GT(rows.size(), 1000);
    const QByteArray inOrder = importedReview("in_order.steelyard", rows);
    std::mt19937 random(20261125);
    std::shuffle(rows.begin() + 1, rows.end(), random);
    EXPECT_EQ(importedReview("shuffled.steelyard", rows), inOrder);
}

TEST_F(ImportOrder, AndTimesChangeNoReading)
{
    const QByteArrayList rows = exportedRows();
    EXPECT_EQ(importedReview("twice.steelyard", rows, 2), importedReview("once.steelyard", rows));
}

TEST_F(Club, ImportGuessesHowAFileIsWrittenAndAsksWhenItCantKnow)
{
    ASSERT_EQ(run("new").status, 0);
    const QByteArray header =
        "Datum;Sportler;\xC3\x9C"
        "bung;Gewicht;Wdh\n";
    write(file("sure.csv"), header + "13.11.2026;Ada Fulcrum;Arm curl;42,5;10\n");
    const Said sure = run("import", {file("sure.csv"), QStringLiteral("--guess")});
    EXPECT_EQ(sure.status, 0) << sure.err.toStdString();
    EXPECT_TRUE(sure.out.contains("1 sets new"));
    EXPECT_TRUE(sure.err.contains(QStringLiteral("\"date_order\":\"dmy\"")));
    write(file("unsure.csv"), "Date,Athlete,Exercise,Load,Reps\n2/1/2026,Ada Fulcrum,Arm curl,40,10\n");
    const Said unsure = run("import", {file("unsure.csv"), QStringLiteral("--guess")});
    EXPECT_EQ(unsure.status, 1);
    EXPECT_TRUE(unsure.err.contains(QStringLiteral("date_order")));
}

}  // namespace
}  // namespace steelyard
