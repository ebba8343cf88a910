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

}  // namespace
}  // namespace steelyard
