// `forecast` as a script calls it: one line of the log, then questions about the next set.
#include "tests/console/club.h"

#include <QtCore/QJsonArray>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

const QString kCurl = QStringLiteral("arm-curl/straight-bar-upright/supinated-medium/strict");

class ForecastCommand : public Club {
protected:
    void SetUp() override
    {
        ASSERT_EQ(run("new").status, 0);
        QByteArray csv =
            "date,athlete,exercise,variant,grip,standard,load,unit,reps,off,rir\n"
            "2026-11-20,Ada Fulcrum,Crunch,floor,free,strict,0,kg,20,0,2\n";
        for (int i = 0; i < 12; ++i)
            csv += QDate(2026, 11, 23).addDays(-7 * i).toString(Qt::ISODate).toUtf8()
                   + ",Ada Fulcrum,Arm curl,\"straight bar, upright\",\"supinated, medium\",strict,40,kg,10,0,2\n";
        write(file("log.csv"), csv);
        const Said said = run("import", {file("log.csv")});
        ASSERT_EQ(said.status, 0) << said.err.toStdString();
    }
    [[nodiscard]] Said ask(const QStringList& more, const QString& athlete = QStringLiteral("Ada Fulcrum"),
                           const QString& line = kCurl) const
    {
        return run("forecast",
                   QStringList{QStringLiteral("--athlete"), athlete, QStringLiteral("--line"), line} + more);
    }
    // Words separated by spaces.
    [[nodiscard]] Said say(const char* words) const { return ask(QString::fromUtf8(words).split(u' ')); }
};

QJsonObject objectOf(const Said& said)
{
    EXPECT_EQ(said.status, 0) << said.err.toStdString();
    return QJsonDocument::fromJson(said.out).object();
}

TEST_F(ForecastCommand, GivesEveryKeyToAScript)
{
    const QJsonObject json = objectOf(say("--load 40 --rir 2 --json"));
    for (const char* name :
         {"as_of", "athlete", "line", "load_kg", "rir", "set", "reps_median", "reps_low50", "reps_high50", "reps_low80",
          "reps_high80", "reps_low95", "reps_high95", "target_reps", "target_probability", "chances", "cautions"})
        EXPECT_TRUE(json.contains(QLatin1StringView(name))) << name;
    EXPECT_EQ(json[QStringLiteral("as_of")], QStringLiteral("2026-11-25"));
    EXPECT_EQ(json[QStringLiteral("line")], kCurl);
    EXPECT_EQ(json[QStringLiteral("load_kg")].toDouble(), 40);
    EXPECT_EQ(json[QStringLiteral("set")].toInt(), 1);
    EXPECT_NEAR(json[QStringLiteral("reps_median")].toDouble(), 10, 0.7);
    EXPECT_FALSE(json.contains(QStringLiteral("wanted_reps")));
    const QJsonArray chances = json[QStringLiteral("chances")].toArray();
    ASSERT_GT(chances.size(), 8);
    EXPECT_EQ(chances[0].toObject()[QStringLiteral("reps")].toInt(), 1);
    const int target = json[QStringLiteral("target_reps")].toInt();
    EXPECT_EQ(chances[target - 1].toObject()[QStringLiteral("probability")],
              json[QStringLiteral("target_probability")]);
}

TEST_F(ForecastCommand, TurnsTheQuestionRound)
{
    const QJsonObject json = objectOf(say("--reps 8 --rir 1.5 --json"));
    EXPECT_EQ(json[QStringLiteral("wanted_reps")].toInt(), 8);
    EXPECT_EQ(json[QStringLiteral("target_reps")].toInt(), 8);
    EXPECT_TRUE(json[QStringLiteral("loadable_kg")].isNull());  // nobody said where Ada trains
    EXPECT_EQ(json[QStringLiteral("load_for_reps_kg")], json[QStringLiteral("load_kg")]);
    const QString load = QString::number(json[QStringLiteral("load_kg")].toDouble(), 'f', 3);
    const QJsonObject back = objectOf(ask(
        {QStringLiteral("--load"), load, QStringLiteral("--rir"), QStringLiteral("1.5"), QStringLiteral("--json")}));
    EXPECT_NEAR(back[QStringLiteral("reps_median")].toDouble(), json[QStringLiteral("reps_median")].toDouble(), 0.01);
    EXPECT_EQ(back[QStringLiteral("target_reps")].toInt(), 8);
}

TEST_F(ForecastCommand, TellsAPersonInAFewLinesAndLeavesTheBookAlone)
{
    const QByteArray before = test::fileBytes(m_book);
    const Said said = say("--load 40 --rir 2 --set-number 2");
    ASSERT_EQ(said.status, 0) << said.err.toStdString();
    EXPECT_EQ(said.out.count('\n'), 3);
    EXPECT_TRUE(said.out.contains("Ada Fulcrum: Arm curl"));
    EXPECT_TRUE(said.out.contains("Set 2 at 40 kg with 2 in reserve"));
    EXPECT_TRUE(said.out.contains("Aim for "));
    const Said load = say("--reps 1 --rir 2");
    EXPECT_EQ(load.out.count('\n'), 4);
    EXPECT_TRUE(load.out.contains("For 1 repetition: ")) << load.out.toStdString();
    EXPECT_EQ(test::fileBytes(m_book), before);
}

TEST_F(ForecastCommand, RefusesInputThatCannotBeAndSaysHowToMendIt)
{
    for (const char* words :
         {"--load -5 --rir 2", "--load=-5 --rir 2", "--load 2001 --rir 2", "--load 40.1234 --rir 2", "--load 0 --rir 2",
          "--load 0.001 --rir 2", "--load 40 --rir -1", "--load 40 --rir 10.1", "--load 40 --rir 999999"}) {
        const Said said = say(words);
        EXPECT_EQ(said.status, 1) << words;
        EXPECT_TRUE(said.out.isEmpty()) << words;
        EXPECT_GT(said.err.size(), 20) << words;
    }
    const Said nobody =
        ask({QStringLiteral("--load"), QStringLiteral("40"), QStringLiteral("--rir"), QStringLiteral("2")},
            QStringLiteral("ada"));
    EXPECT_EQ(nobody.status, 1);
    EXPECT_TRUE(nobody.err.contains(QStringLiteral("Ada Fulcrum")));
    for (const QString& line :
         {QStringLiteral("curl"), QStringLiteral("/"), QStringLiteral("'; DROP TABLE lift_line; --"),
          QString(5000, u'x'), QStringLiteral("\u202Earm")}) {
        const Said said =
            ask({QStringLiteral("--load"), QStringLiteral("40"), QStringLiteral("--rir"), QStringLiteral("2")},
                QStringLiteral("Ada Fulcrum"), line);
        EXPECT_EQ(said.status, 1) << line.toStdString();
        EXPECT_TRUE(said.err.contains(kCurl)) << said.err.toStdString();
    }
}

TEST_F(ForecastCommand, TellsASlipInTheWordsFromRefusedInput)
{
    for (const char* words :
         {"--load 40", "--rir 2", "--load 40 --reps 8 --rir 2", "--load ten --rir 2", "--load nan --rir 2",
          "--load 1e3 --rir 2", "--load 40,5 --rir 2", "--load 40 --rir two", "--load 40 --rir", "--reps 0 --rir 2",
          "--reps 51 --rir 2", "--reps 8.5 --rir 2", "--load 40 --rir 2 --set-number 0", "--load 40 --rir 2 --colour"})
        EXPECT_EQ(say(words).status, 2) << words;
    EXPECT_EQ(
        run("forecast", {QStringLiteral("--load"), QStringLiteral("40"), QStringLiteral("--rir"), QStringLiteral("2")})
            .status,
        2);
}

TEST_F(ForecastCommand, SaysWhichLineSaysNothing)
{
    const QString line = QStringLiteral("crunch/floor/free/strict");
    const Said said =
        ask({QStringLiteral("--load"), QStringLiteral("10"), QStringLiteral("--rir"), QStringLiteral("2")},
            QStringLiteral("Ada Fulcrum"), line);
    EXPECT_EQ(said.status, 1);
    EXPECT_TRUE(said.err.contains(line)) << said.err.toStdString();
    EXPECT_TRUE(said.err.contains(QStringLiteral("load above zero")));
    const Said early = console({QStringLiteral("forecast"), QStringLiteral("--book"), m_book,
                                QStringLiteral("--athlete"), QStringLiteral("Ada Fulcrum"), QStringLiteral("--line"),
                                kCurl, QStringLiteral("--load"), QStringLiteral("40"), QStringLiteral("--rir"),
                                QStringLiteral("2"), QStringLiteral("--as-of"), QStringLiteral("2020-01-01")});
    EXPECT_EQ(early.status, 1);
    EXPECT_FALSE(early.err.isEmpty());
}

TEST_F(Club, ForecastTellsNoBookFromANewerOne)
{
    const QStringList words{QStringLiteral("--athlete"), QStringLiteral("A"),      QStringLiteral("--line"),
                            QStringLiteral("b"),         QStringLiteral("--load"), QStringLiteral("4"),
                            QStringLiteral("--rir"),     QStringLiteral("2")};
    write(m_book, "not a book at all");
    EXPECT_EQ(run("forecast", words).status, 3);
    ASSERT_TRUE(QFile::remove(m_book));
    EXPECT_EQ(run("forecast", words).status, run("review").status);  // no file at all
    ASSERT_EQ(run("new").status, 0);
    EXPECT_EQ(run("forecast", words).status, 1);  // nobody in it
    {
        auto db = test::must(Database::open(m_book, Access::ReadWrite));
        test::must(db->execute("PRAGMA user_version = 99"));
    }
    EXPECT_EQ(run("forecast", words).status, 4);
}

}  // namespace
}  // namespace steelyard
