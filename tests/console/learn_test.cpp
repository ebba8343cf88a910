// `learn` as a script calls it, on a roster whose days vary much more than usual.
#include "tests/console/club.h"

#include <QtCore/QJsonArray>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>

#include <random>

namespace steelyard {
namespace {

class LearnCommand : public Club {
protected:
    // One line each, once a week, two sets.
    void importRoster(int lifters) const
    {
        ASSERT_EQ(run("new").status, 0);
        std::mt19937_64 random(5);
        std::normal_distribution<double> form(0, 2.5);
        QByteArray csv = "date,athlete,exercise,variant,grip,standard,load,unit,reps,off,rir\n";
        for (int lifter = 0; lifter < lifters; ++lifter)
            for (int week = 0; week < 14; ++week) {
                const int reps = std::max(2, static_cast<int>(10 + form(random)));
                for (const int tired : {0, 1})
                    csv += QDate(2026, 11, 23).addDays(-7 * week).toString(Qt::ISODate).toUtf8() + ",Lifter "
                           + QByteArray::number(lifter)
                           + ",Arm curl,\"straight bar, upright\",\"supinated, medium\",strict,40,kg,"
                           + QByteArray::number(reps - tired) + ",0,1\n";
            }
        write(file("log.csv"), csv);
        const Said said = run("import", {file("log.csv")});
        ASSERT_EQ(said.status, 0) << said.err.toStdString();
    }
};

TEST_F(LearnCommand, StoresAVersionThatTheReviewThenNames)
{
    importRoster(21);
    const Said said = run("learn", {QStringLiteral("--json")});
    ASSERT_EQ(said.status, 0) << said.err.toStdString();
    const QJsonObject json = QJsonDocument::fromJson(said.out).object();
    EXPECT_EQ(json[QStringLiteral("version")].toInt(), 1);
    EXPECT_EQ(json[QStringLiteral("kept")].toString(), QString());
    EXPECT_EQ(json[QStringLiteral("lines")].toInt(), 21);
    EXPECT_EQ(json[QStringLiteral("sets")].toInt(), 21 * 14 * 2);
    EXPECT_GT(json[QStringLiteral("log_likelihood_after")].toDouble(),
              json[QStringLiteral("log_likelihood_before")].toDouble());
    EXPECT_LE(json[QStringLiteral("evaluations")].toInt(), 400);
    double dayNoise = 0;
    for (const auto& one : json[QStringLiteral("changes")].toArray())
        if (one.toObject()[QStringLiteral("name")] == QStringLiteral("day_noise"))
            dayNoise = one.toObject()[QStringLiteral("after")].toDouble()
                       / one.toObject()[QStringLiteral("before")].toDouble();
    EXPECT_GT(dayNoise, 1.5);

    const auto versionOf = [this](const QString& day) {
        const Said review = console({QStringLiteral("review"), QStringLiteral("--json"), QStringLiteral("--as-of"), day,
                                     QStringLiteral("--book"), m_book});
        return QJsonDocument::fromJson(review.out).object()[QStringLiteral("parameters_version")].toInt(-1);
    };
    EXPECT_EQ(versionOf(QStringLiteral("2026-11-25")), 1);
    EXPECT_EQ(versionOf(QStringLiteral("2026-11-24")), 0);
    EXPECT_EQ(run("verify").status, 0);
}

TEST_F(LearnCommand, SaysThatThereIsTooLittleAndLeavesTheBookAlone)
{
    importRoster(19);
    const QByteArray before = test::rawDump(*test::must(Database::open(m_book, Access::ReadOnly)));
    const Said said = run("learn");
    EXPECT_EQ(said.status, 0) << said.err.toStdString();
    EXPECT_TRUE(said.out.contains("Too little to learn from: 19 lift lines")) << said.out.constData();
    EXPECT_EQ(test::rawDump(*test::must(Database::open(m_book, Access::ReadOnly))), before);
}

TEST_F(LearnCommand, IsRefusedWhileAnotherProgramHoldsTheBook)
{
    ASSERT_EQ(run("new").status, 0);
    const FixedClock clock(QDate(2026, 11, 25));
    const auto holder = test::must(Book::open(m_book, clock));
    const Said said = run("learn");
    EXPECT_EQ(said.status, 3);
    EXPECT_TRUE(said.err.contains(QStringLiteral("open in another program")));
}

}  // namespace
}  // namespace steelyard
