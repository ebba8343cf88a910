#include "core/book/sheet_targets.h"

#include "core/book/block_outlook.h"
#include "core/book/day_sheets.h"
#include "core/book/keyed_lifter.h"
#include "core/edits/edits.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/library_repository.h"
#include "tests/support/log_builder.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;
using testing_support::madeEntry;

const QDate kToday(2026, 3, 2);

// A lifter who curls 40 kg ten times with two in reserve, and a plan for today.
class PlannedToday : public testing::Test {
protected:
    TempBook m_book{kToday};

    void SetUp() override
    {
        for (int i = 1; i <= 14; ++i)
            must(m_book->history().perform(addSet(m_book.line(), kToday.addDays(-4 * i),
                                                  madeEntry({.load = 40, .reps = 10, .off = 0, .rir = 2}))));
    }
    void plan(std::optional<double> kg)
    {
        Slot slot{m_book.line().variant, m_book.line().grip, m_book.line().standard};
        slot.plannedRir = Decimal::parse(u"2");
        if (kg) slot.load = madeEntry({.load = *kg}).load;
        const Block block{
            m_book.athlete(), QStringLiteral("Spring"), {}, kToday, {{WeekKind::Normal, {{kToday, {}, {slot}}}}}};
        must(m_book->history().perform(addBlock(block)));
    }
    [[nodiscard]] SheetTarget printed() const
    {
        auto reader = must(Database::openReader(m_book.path()));
        const auto sheets = must(readDaySheets(*reader, {kToday, 1, std::nullopt}, {}));
        if (sheets.size() != 1) qFatal("one sheet was to be made");
        return sheets[0].sheet.exercises.at(0).target;
    }
};

TEST_F(PlannedToday, ALoadOfThePlanHasTheRepetitionsThatAreLikelyAtIt)
{
    plan(45);
    const SheetTarget target = printed();
    EXPECT_EQ(target.load.value().load.kilograms(), 45);
    ASSERT_EQ(target.reps.size(), 3u);
    EXPECT_LT(target.reps[0], 8);
    EXPECT_TRUE(target.why.contains(QStringLiteral("of 100"))) << target.why.toStdString();
}

TEST_F(PlannedToday, WhoKeysSeesTheSameTargets)
{
    plan(45);
    auto reader = must(Database::openReader(m_book.path()));
    const auto keyed = must(readKeyedLifter(*reader, m_book.athlete(), kToday));
    ASSERT_TRUE(keyed.sheet);
    EXPECT_EQ(keyed.sheet->exercises.at(0).target.reps, printed().reps);
}

TEST_F(PlannedToday, WhatIsAlreadyInTheBookOfThatDayChangesNoTarget)
{
    plan(45);
    const auto before = printed().reps;
    must(m_book->history().perform(
        addSet(m_book.line(), kToday, madeEntry({.load = 45, .reps = 15, .off = 0, .rir = 4}))));
    EXPECT_EQ(printed().reps, before);
}

TEST_F(PlannedToday, WithoutALoadInThePlanTheForecastGivesOne)
{
    plan(std::nullopt);
    const SheetTarget target = printed();
    EXPECT_EQ(target.load.value().load.kilograms(), 40);
    ASSERT_EQ(target.reps.size(), 3u);
    EXPECT_LE(target.reps[0], 11) << "one more than every time, only where that is likely enough";
    EXPECT_TRUE(target.why.contains(QStringLiteral("of 100"))) << target.why.toStdString();
    auto reader = must(Database::openReader(m_book.path()));
    const auto log = must(readAthleteLog(*reader, must(LibraryRepository(*reader).read()), m_book.athlete(), kToday));
    const auto outlook = must(readBlockOutlook(*reader, {m_book.athlete(), log.blocks.at(0).value, kToday}));
    EXPECT_EQ(target.reps, outlook.forecast.slotList.at(0).load.targetReps) << "as beside the plan";
}

TEST_F(PlannedToday, AfterAMonthAwayTheSheetStartsAStepLighterWhateverTheForecast)
{
    Slot slot{m_book.line().variant, m_book.line().grip, m_book.line().standard};
    const QDate back = kToday.addDays(31);
    must(m_book->history().perform(
        addBlock({m_book.athlete(), QStringLiteral("Spring"), {}, back, {{WeekKind::Normal, {{back, {}, {slot}}}}}})));
    auto reader = must(Database::openReader(m_book.path()));
    const auto sheets = must(readDaySheets(*reader, {back, 1, std::nullopt}, {}));
    EXPECT_LT(sheets.at(0).sheet.exercises.at(0).target.load.value().load.kilograms(), 40);
}

}  // namespace
}  // namespace steelyard
