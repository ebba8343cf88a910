#include "core/care/retention.h"

#include "core/edits/edits.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;

class Retention : public testing::Test {
protected:
    test::TempBook m_book;

    [[nodiscard]] QStringList quiet(QDate today, int months = kUsualRetentionMonths)
    {
        QStringList names;
        for (const auto& one : must(inactiveAthletes(m_book->database(), today, months))) names += one.name;
        return names;
    }
    Id<Athlete> add(const char* name)
    {
        Athlete athlete;
        athlete.name = QString::fromLatin1(name);
        must(m_book->history().perform(addAthlete(athlete)));
        return must(m_book->athletes().findByName(athlete.name)).id;
    }
};

TEST_F(Retention, ListsALifterOnTheDayTheMonthsAreOverAndNotBefore)
{
    must(m_book->history().perform(addSet(m_book.line(), QDate(2026, 3, 15), test::workSet("40", 10))));
    EXPECT_EQ(quiet(QDate(2028, 3, 14)), QStringList());
    EXPECT_EQ(quiet(QDate(2028, 3, 15)), QStringList{QStringLiteral("Ada Fulcrum")});
    EXPECT_EQ(quiet(QDate(2026, 4, 14), 1), QStringList());
    EXPECT_EQ(quiet(QDate(2026, 4, 15), 1), QStringList{QStringLiteral("Ada Fulcrum")});
}

TEST_F(Retention, CountsEveryKindOfEntryAsNew)
{
    const auto other = add("Bo Marrow");
    must(m_book->history().perform(recordBodyMass(other, {QDate(2020, 5, 1), *Load::parseWithUnit(u"80 kg")})));
    EXPECT_EQ(quiet(QDate(2026, 3, 2)), (QStringList{QStringLiteral("Ada Fulcrum"), QStringLiteral("Bo Marrow")}));
    Decision decision{.athlete = other};
    decision.rule = QStringLiteral("looked_at");
    decision.madeOn = QDate(2026, 1, 1);
    must(m_book->history().perform(makeDecision(decision, QStringLiteral("looked"))));
    EXPECT_EQ(quiet(QDate(2026, 3, 2)), QStringList{QStringLiteral("Ada Fulcrum")});
    Block block{.athlete = m_book.athlete()};
    block.name = QStringLiteral("Spring");
    block.start = QDate(2026, 4, 6);
    block.weeks = {{WeekKind::Normal, {{QDate(2026, 4, 6), {}, {}}}}};
    must(m_book->history().perform(addBlock(block)));
    EXPECT_EQ(quiet(QDate(2026, 3, 2)), QStringList());
}

TEST_F(Retention, SaysNothingOfALifterWithoutAnyDay)
{
    add("Nobody Yet");
    EXPECT_EQ(quiet(QDate(2099, 1, 1)), QStringList{QStringLiteral("Ada Fulcrum")});  // who agreed in 2020
}

}  // namespace
}  // namespace steelyard
