#include "core/sheets/sheets_for_day.h"

#include "tests/support/sheet_samples.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::SheetSample;

const QDate kMonday(2027, 3, 8);

TEST(SheetsForDay, TwoOfTheLastFourWeekdaysMakeALifterExpected)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-28), {{u"40", 10}});
    EXPECT_FALSE(isExpected(sample.log, kMonday));
    sample.done(sample.curl, kMonday.addDays(-7), {{u"40", 10}});
    EXPECT_TRUE(isExpected(sample.log, kMonday));
    EXPECT_FALSE(isExpected(sample.log, kMonday.addDays(1)));
    sample.log.athlete.value.archived = true;
    EXPECT_FALSE(isExpected(sample.log, kMonday));
}

TEST(SheetsForDay, APlannedDayMakesALifterExpected)
{
    SheetSample sample;
    sample.plan(kMonday, {sample.curl});
    EXPECT_TRUE(isExpected(sample.log, kMonday));
}

TEST(SheetsForDay, EachLifterGetsTheLoadsOfTheirOwnGym)
{
    SheetSample small;
    small.done(small.dumbbell, kMonday.addDays(-7), {{u"24", 12}});
    small.done(small.dumbbell, kMonday.addDays(-14), {{u"24", 12}});
    SheetSample large = small;
    Gym coarse = small.gym;
    coarse.dumbbells = {{QStringLiteral("dumbbells"), testing_support::kg(u"4"), testing_support::kg(u"4"),
                         testing_support::kg(u"40")}};
    const std::vector<Row<Gym>> gyms{{Id<Gym>(1), QUuid(), small.gym}, {Id<Gym>(2), QUuid(), coarse}};
    small.log.athlete.value.gym = Id<Gym>(1);
    large.log.athlete.value.gym = Id<Gym>(2);
    const auto sheets = sheetsForDay(std::vector{small.log, large.log}, small.library, gyms, kMonday);
    ASSERT_EQ(sheets.size(), 2U);
    EXPECT_EQ(sheets[0].exercises.at(0).target.load->load.kilograms(), 26);
    EXPECT_EQ(sheets[1].exercises.at(0).target.load->load.kilograms(), 28);
}

}  // namespace
}  // namespace steelyard
