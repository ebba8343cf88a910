#include "core/analysis/weekly_sets.h"

#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const Id<Muscle> kTriceps(1);
const Id<Muscle> kChest(2);
const QDate kMonday(2026, 5, 25);

std::vector<MadeSet> sets(int count, SetKind kind = SetKind::Work)
{
    return std::vector<MadeSet>(static_cast<std::size_t>(count), MadeSet{.load = 50, .reps = 10, .kind = kind});
}

// Worked by hand after Pelland et al. 2025 (a direct set 1, an indirect one a half): 4 bench presses and 3 extensions are
// 4 x 0.5 + 3 = 5 sets for the triceps.
TEST(MuscleSets, CountHelpersByTheirShare)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Bench press")).trains(kChest, QStringLiteral("chest"), 1);
    builder.trains(kTriceps, QStringLiteral("triceps"), 0.5).exposure(kMonday, sets(4));
    builder.line(QStringLiteral("Extension")).trains(kTriceps, QStringLiteral("triceps"), 1);
    builder.exposure(kMonday.addDays(2), sets(3));
    const auto counted = muscleSets(builder.build(), kMonday, kMonday.addDays(6));
    EXPECT_DOUBLE_EQ(counted.at(kTriceps), 5.0);
    EXPECT_DOUBLE_EQ(counted.at(kChest), 4.0);
}

TEST(MuscleSets, LeaveOutOtherDaysWarmUpsAndDeloads)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Extension")).trains(kTriceps, QStringLiteral("triceps"), 1);
    builder.exposure(kMonday.addDays(-1), sets(3)).exposure(kMonday, sets(2, SetKind::WarmUp));
    builder.exposure(kMonday.addDays(1), sets(2)).exposure(kMonday.addDays(3), sets(2, SetKind::Deload));
    builder.exposure(kMonday.addDays(6), sets(1, SetKind::Test)).exposure(kMonday.addDays(7), sets(3));
    EXPECT_DOUBLE_EQ(muscleSets(builder.build(), kMonday, kMonday.addDays(6)).at(kTriceps), 3.0);
    EXPECT_TRUE(muscleSets(builder.build(), kMonday.addDays(20), kMonday.addDays(26)).empty());
}

// A week worked by hand, day by day. Monday: 3 presses (chest 1, triceps and shoulder a half), 3 rows (back 1, biceps a
// half). Wednesday: 3 curls (biceps 1), a warm-up and 2 extensions (triceps 1). Friday: 4 presses, 2 rows.
// Chest 3 + 4 = 7; triceps 7 x 0.5 + 2 = 5.5; shoulder 3.5; back 5; biceps 5 x 0.5 + 3 = 5.5.
TEST(MuscleSets, OfAWholeWeekAgreeWithTheSumsByHand)
{
    const Id<Muscle> shoulder(3);
    const Id<Muscle> back(4);
    const Id<Muscle> biceps(5);
    LogBuilder builder;
    builder.line(QStringLiteral("Press")).trains(kChest, QStringLiteral("chest"), 1);
    builder.trains(kTriceps, QStringLiteral("triceps"), 0.5).trains(shoulder, QStringLiteral("shoulder"), 0.5);
    builder.exposure(kMonday, sets(3)).exposure(kMonday.addDays(4), sets(4)).exposure(kMonday.addDays(7), sets(1));
    builder.line(QStringLiteral("Row")).trains(back, QStringLiteral("back"), 1);
    builder.trains(biceps, QStringLiteral("biceps"), 0.5);
    builder.exposure(kMonday, sets(3)).exposure(kMonday.addDays(4), sets(2));
    builder.line(QStringLiteral("Curl")).trains(biceps, QStringLiteral("biceps"), 1);
    builder.exposure(kMonday.addDays(2), sets(3));
    builder.line(QStringLiteral("Extension")).trains(kTriceps, QStringLiteral("triceps"), 1);
    builder.exposure(kMonday.addDays(1), sets(1, SetKind::WarmUp)).exposure(kMonday.addDays(2), sets(2));
    const std::map<Id<Muscle>, double> byHand{{kTriceps, 5.5}, {kChest, 7}, {shoulder, 3.5}, {back, 5}, {biceps, 5.5}};
    const auto weeks = muscleSetsByWeek(builder.build(), kMonday, kMonday.addDays(8));
    ASSERT_EQ(weeks.size(), 2u);
    EXPECT_EQ(weeks[0], byHand);
    EXPECT_EQ(weeks[0], muscleSets(builder.build(), kMonday, kMonday.addDays(6)));
    EXPECT_EQ(weeks[1].at(kChest), 1);
}

}  // namespace
}  // namespace steelyard
