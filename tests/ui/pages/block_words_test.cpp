#include "ui/pages/block/block_words.h"

#include "tests/support/plan_kit.h"
#include "ui/pages/block/block_sources.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::PlanKit;
using enum PlanKit::Lift;

TEST(BlockWords, ReadWeekdaysByTheirBeginningsAndByNumber)
{
    EXPECT_EQ(readWeekdays(QStringLiteral("mon thu")), (std::vector{1, 4}));
    EXPECT_EQ(readWeekdays(QStringLiteral("5, 1")), (std::vector{1, 5}));
    EXPECT_EQ(readWeekdays(weekdaysText({2, 6, 7})), (std::vector{2, 6, 7}));
    EXPECT_FALSE(readWeekdays(QStringLiteral("t"))) << "Tuesday or Thursday";
    EXPECT_FALSE(readWeekdays(QStringLiteral("8")));
    EXPECT_FALSE(readWeekdays(QString()));
}

TEST(BlockWords, ReadDaysOffAsTheyAreWritten)
{
    const std::vector<DaysOff> some{{QDate(2027, 3, 8), QDate(2027, 3, 14), QStringLiteral("holiday in the hills")},
                                    {QDate(2027, 4, 5), QDate(2027, 4, 5), {}}};
    EXPECT_EQ(readDaysOff(daysOffText(some)).value(), some);
    EXPECT_EQ(readDaysOff(QStringLiteral("2027-03-08 - 2027-03-14 holiday in the hills; 2027-04-05")).value(), some);
    EXPECT_TRUE(readDaysOff(QStringLiteral("  ")).value().empty());
    EXPECT_FALSE(readDaysOff(QStringLiteral("next week")));
}

TEST(BlockWords, ReadBandsByTheBeginningOfAMuscle)
{
    PlanKit kit;
    const std::vector<MuscleAim> two{{PlanKit::chest, 8, 16}, {PlanKit::triceps, 6, 6}};
    EXPECT_EQ(readAims(QStringLiteral("ch 8-16; Triceps 6"), kit.library).value(), two);
    EXPECT_EQ(readAims(aimsText(two, kit.library), kit.library).value(), two);
    EXPECT_TRUE(readAims(QString(), kit.library).value().empty());
    EXPECT_FALSE(readAims(QStringLiteral("b 8-16"), kit.library)) << "back or biceps";
    EXPECT_FALSE(readAims(QStringLiteral("chest many"), kit.library));
}

TEST(BlockWords, NameAnEditByWhatItIsAbout)
{
    PlanKit kit;
    Block block = PlanKit::block(QDate(2027, 3, 1), 3, {1});
    for (PlannedWeek& week : block.weeks) week.days[0].slotList = {PlanKit::slot(Curl, 3), PlanKit::slot(Row, 3)};
    const QString deed = QStringLiteral("a set more on %1");
    EXPECT_EQ(editWords(deed, block, {{0, 0, 0}}, kit.library), QStringLiteral("a set more on Curl"));
    EXPECT_EQ(editWords(deed, block, {{0, 0, 0}, {1, 0, 0}, {2, 0, 0}}, kit.library),
              QStringLiteral("a set more on Curl, 3 week(s)"));
    EXPECT_EQ(editWords(deed, block, {{0, 0, 0}, {0, 0, 1}}, kit.library), QStringLiteral("a set more on 2 lift(s)"));
}

TEST(BlockWords, SayADoseWithoutWhatIsLeftOpen)
{
    Slot slot = PlanKit::slot(Press, 3);
    EXPECT_EQ(doseWords(slot), QStringLiteral("3 × 8–12"));
    slot.band = {10, 10};
    slot.plannedRir = Decimal(2);
    slot.restSeconds = 90;
    EXPECT_EQ(doseWords(slot), QStringLiteral("3 × 10 · RIR 2 · 90 s"));
}

TEST(BlockSources, BeginAfterTheLastBlockOnAMonday)
{
    const QDate today(2027, 3, 3);
    EXPECT_EQ(usualStart({}, today), QDate(2027, 3, 8));
    EXPECT_EQ(usualStart({}, QDate(2027, 3, 8)), QDate(2027, 3, 8));
    const Block running = PlanKit::block(QDate(2027, 3, 1), 4, {1});
    EXPECT_EQ(usualStart({{Id<Block>(1), {}, running}}, today), QDate(2027, 3, 29));
}

TEST(BlockSources, TakeOtherWeekdaysAndGoAroundDaysOff)
{
    Block last = PlanKit::block(QDate(2027, 3, 1), 2, {1, 4});
    for (PlannedWeek& week : last.weeks)
        for (PlannedDay& day : week.days) day.slotList = {PlanKit::slot(Press, 3)};
    const auto sources = blockSources({{Id<Block>(1), {}, last}}, {}, {1, 3, 5});
    ASSERT_EQ(sources.size(), 2U);
    BlockWishes wishes{.athlete = Id<Athlete>(1), .name = QStringLiteral("Next"), .start = QDate(2027, 3, 15)};
    wishes.weekdays = {2, 6};
    wishes.daysOff = {{QDate(2027, 3, 16), QDate(2027, 3, 16), {}}};
    const auto block = startBlock(sources[0], wishes);
    ASSERT_TRUE(block) << qPrintable(block.error().what);
    EXPECT_EQ(weekdaysOf(block->weeks[0]), (std::vector{3, 6}));
    EXPECT_EQ(weekdaysOf(block->weeks[1]), (std::vector{2, 6}));
    EXPECT_EQ(block->weeks[0].days[0].slotList, last.weeks[0].days[0].slotList);
    wishes.weekdays.clear();
    EXPECT_FALSE(startBlock(sources[0], wishes));
}

}  // namespace
}  // namespace steelyard
