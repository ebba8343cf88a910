// `plan` as a script calls it: a block proposed for one lifter, and kept when asked.
#include "tests/console/club.h"

#include <QtCore/QFile>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>
#include <QtCore/QRegularExpression>

#include <set>

namespace steelyard {
namespace {

const QString kLifter = QStringLiteral("Ada Fulcrum");

class PlanCommand : public Club {
protected:
    void SetUp() override { makeClub(); }
    // Words separated by spaces.
    [[nodiscard]] Said plan(const char* words, const QString& athlete = kLifter) const
    {
        return run("plan", QStringList{QStringLiteral("--athlete"), athlete} + QString::fromUtf8(words).split(u' '));
    }
};

TEST_F(PlanCommand, GivesABlockWithItsReasonsToAScriptAndLeavesTheBookAlone)
{
    const QByteArray before = test::fileBytes(m_book);
    const Said said = plan("--from 2026-11-30 --weeks 4 --days 3 --json");
    ASSERT_EQ(said.status, 0) << said.err.toStdString();
    const QJsonObject json = QJsonDocument::fromJson(said.out).object();
    EXPECT_EQ(json[QStringLiteral("athlete")], kLifter);
    EXPECT_EQ(json[QStringLiteral("start")], QStringLiteral("2026-11-30"));
    EXPECT_FALSE(json[QStringLiteral("accepted")].toBool(true));
    const QJsonArray weeks = json[QStringLiteral("weeks")].toArray();
    ASSERT_EQ(weeks.size(), 4);
    EXPECT_EQ(weeks[3].toObject()[QStringLiteral("kind")], QStringLiteral("deload"));
    EXPECT_EQ(weeks[0].toObject()[QStringLiteral("days")].toArray().size(), 3);
    ASSERT_FALSE(json[QStringLiteral("why")].toArray().isEmpty());
    for (const auto& slot : json[QStringLiteral("why")].toArray())
        EXPECT_FALSE(slot.toObject()[QStringLiteral("why")].toString().isEmpty());
    EXPECT_EQ(plan("--from 2026-11-30 --weeks 4 --days 3 --json").out, said.out) << "the same for the same";
    EXPECT_EQ(test::fileBytes(m_book), before);
}

TEST_F(PlanCommand, SaysOfEveryLiftThatIsKnownTheLoadAndHowLikelyItsTargetIs)
{
    const Said said = plan("--from 2026-11-30 --weeks 4 --json");
    const QJsonArray weeks = QJsonDocument::fromJson(said.out).object()[QStringLiteral("weeks")].toArray();
    int known = 0;
    for (const auto& week : weeks)
        for (const auto& day : week.toObject()[QStringLiteral("days")].toArray())
            for (const auto& slot : day.toObject()[QStringLiteral("slots")].toArray()) {
                const QJsonObject expected = slot.toObject()[QStringLiteral("expected")].toObject();
                EXPECT_FALSE(expected[QStringLiteral("why")].toString().isEmpty());
                if (!expected[QStringLiteral("chance")].isDouble()) continue;
                ++known;
                const double chance = expected[QStringLiteral("chance")].toDouble();
                EXPECT_GT(chance, 0) << chance;
                EXPECT_LE(chance, 1) << chance;
                EXPECT_GT(expected[QStringLiteral("load_kg")].toDouble(), 0);
                EXPECT_EQ(expected[QStringLiteral("target_reps")].toArray().size(),
                          slot.toObject()[QStringLiteral("sets")].toInt());
            }
    EXPECT_GT(known, 8);
    EXPECT_TRUE(plan("--from 2026-11-30 --weeks 4").out.contains(" in reserve: ")) << "to a person too";
}

void addKeys(const QJsonValue& value, std::set<QString>& keys)
{
    for (const auto& one : value.toArray()) addKeys(one, keys);
    const QJsonObject object = value.toObject();
    for (auto at = object.begin(); at != object.end(); ++at) {
        keys.insert(at.key());
        addKeys(at.value(), keys);
    }
}

TEST_F(PlanCommand, PrintsWhatTheGuideSays)
{
    std::set<QString> printed;
    addKeys(QJsonDocument::fromJson(plan("--from 2026-11-30 --minutes 20 --json").out).object(), printed);
    QFile guide(QStringLiteral(STEELYARD_SOURCE_DIR "/resources/guide/console.md"));
    ASSERT_TRUE(guide.open(QIODevice::ReadOnly));
    const QString text = QString::fromUtf8(guide.readAll());
    const qsizetype from = text.indexOf(QStringLiteral("`plan --json`"));
    const QString block = text.mid(from, text.indexOf(QStringLiteral("\n```\n"), from) - from);
    std::set<QString> documented;
    for (auto found = QRegularExpression(QStringLiteral("\"(\\w+)\":")).globalMatch(block); found.hasNext();)
        documented.insert(found.next().captured(1));
    EXPECT_EQ(printed, documented);
}

TEST_F(PlanCommand, TellsAPersonWeekByWeek)
{
    const Said said = plan("--from 2026-11-30 --minutes 20");
    ASSERT_EQ(said.status, 0) << said.err.toStdString();
    for (const char* words : {"Ada Fulcrum: Block from 2026-11-30", "Week 1\n", "Week 5, deload", "3 in reserve",
                              "\nWhy\n", "\nNot met\n", "the minutes of a day"})
        EXPECT_TRUE(said.out.contains(words)) << words << "\n" << said.out.toStdString();
}

TEST_F(PlanCommand, KeepsTheBlockWhenAskedAsAStepThatCanBeUndone)
{
    const auto blocks = [&] {
        const FixedClock clock(QDate(2026, 11, 25));
        auto book = test::must(Book::open(m_book, clock));
        const auto athlete = test::must(book->athletes().findByName(kLifter));
        return std::pair(test::must(book->blocks().of(athlete.id)).size(), book->history().canUndo());
    };
    const auto before = blocks();
    ASSERT_EQ(plan("--from 2026-11-30 --accept --json").status, 0);
    EXPECT_EQ(blocks(), std::pair(before.first + 1, true));
    const FixedClock clock(QDate(2026, 11, 25));
    auto book = test::must(Book::open(m_book, clock));
    test::must(book->history().undo());
    book.reset();
    EXPECT_EQ(blocks().first, before.first);
}

TEST_F(PlanCommand, TellsASlipInTheWordsFromRefusedInput)
{
    for (const char* words : {"--weeks 4", "--from soon", "--from 2026-11-30 --weeks 0", "--from 2026-11-30 --weeks 17",
                              "--from 2026-11-30 --days 8", "--from 2026-11-30 --days two",
                              "--from 2026-11-30 --minutes 0", "--from 2026-11-30 --colour"})
        EXPECT_EQ(plan(words).status, 2) << words;
    EXPECT_EQ(run("plan", {QStringLiteral("--from"), QStringLiteral("2026-11-30")}).status, 2);
    const Said nobody = plan("--from 2026-11-30", QStringLiteral("Nobody Here"));
    EXPECT_EQ(nobody.status, 1);
    EXPECT_TRUE(nobody.err.contains(QStringLiteral("Nobody Here"))) << nobody.err.toStdString();
    write(m_book, "not a book at all");
    EXPECT_EQ(plan("--from 2026-11-30").status, 3);
}

}  // namespace
}  // namespace steelyard
