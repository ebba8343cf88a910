#include "core/analysis/workload.h"

#include "core/analysis/discomfort_zones.h"
#include "tests/support/log_builder.h"
#include "tests/support/r_script.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::runR;

const QDate kMonday(2026, 5, 25);

// Foster's definitions (Foster 1998, Med Sci Sports Exerc 30:1164-1168): load = sum, monotony = mean through standard
// deviation, strain = load x monotony. The tables of the paper weren't at hand, so the week is made up and worked in R 4.2.2:
// sum 1760, sample standard deviation 247.62.
TEST(Workload, MonotonyAndStrainOfAWeekAreThoseOfItsDefinition)
{
    const std::array<double, 7> days{0, 420, 0, 560, 300, 0, 480};
    const FosterWeek week = fosterWeek(days);
    EXPECT_DOUBLE_EQ(week.load, 1760);
    ASSERT_TRUE(week.monotony && week.strain);
    EXPECT_NEAR(*week.monotony, 1.0154, 1e-4);
    EXPECT_NEAR(*week.strain, 1787.1, 0.1);
}

TEST(Workload, MonotonyAgreesWithR)
{
    const std::vector<double> days{31.5, 0, 44, 12, 0, 8.25, 27};
    const auto inR = runR(
        "x <- scan(file('stdin'), quiet = TRUE); m <- mean(x) / sd(x); "
        "cat(format(c(m, sum(x) * m), digits = 17))",
        days);
    ASSERT_EQ(inR.size(), 2u);
    std::array<double, 7> week{};
    std::ranges::copy(days, week.begin());
    EXPECT_NEAR(*fosterWeek(week).monotony, inR[0], 1e-12);
    EXPECT_NEAR(*fosterWeek(week).strain, inR[1], 1e-9);
}

TEST(Workload, DaysAllAlikeHaveNoMonotonyRatherThanABigOne)
{
    const std::array<double, 7> alike{0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1};
    EXPECT_FALSE(fosterWeek(alike).monotony);
    EXPECT_FALSE(fosterWeek(alike).strain);
    EXPECT_FALSE(fosterWeek(std::array<double, 7>{}).monotony);
}

// By hand: Monday 2 sets at 2 and 1 in reserve, efforts 8 and 9: 17. Thursday 3 sets, one failed part-way (10), one at 3 in
// reserve (7), one unknown, which takes the mean 8.5: 25.5. Together 42.5, mean 6.0714, sample standard deviation
// sqrt((17^2 + 25.5^2 - 7 x 6.0714^2) / 6) = 10.6553, monotony 0.56980, strain 24.217.
TEST(Workload, SessionEffortIsMeanEffortTimesSets)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Row"))
        .exposure(kMonday, {{.load = 50, .reps = 10, .rir = 2}, {.load = 50, .reps = 9, .rir = 1}});
    builder.exposure(kMonday.addDays(3), {{.load = 30, .reps = 5, .kind = SetKind::WarmUp},
                                          {.load = 50, .reps = 8, .failed = true},
                                          {.load = 50, .reps = 8, .rir = 3},
                                          {.load = 50, .reps = 8}});
    const auto weeks = weekLoads(builder.build(), kMonday, kMonday.addDays(6));
    ASSERT_EQ(weeks.size(), 1u);
    EXPECT_EQ(weeks[0].sessions, 2);
    EXPECT_EQ(weeks[0].sets, 5);
    EXPECT_EQ(weeks[0].effortSets, 4);
    ASSERT_TRUE(weeks[0].effort && weeks[0].monotony && weeks[0].strain);
    EXPECT_DOUBLE_EQ(*weeks[0].effort, 42.5);
    EXPECT_NEAR(*weeks[0].monotony, 0.56980, 5e-5);
    EXPECT_NEAR(*weeks[0].strain, 24.217, 5e-3);
    EXPECT_DOUBLE_EQ(weeks[0].volumeKg, 50 * (10 + 9 + 8 + 8 + 8));
}

TEST(Workload, AWeekWithADayOfUnknownEffortHasNone)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Row")).exposure(kMonday, {{.load = 50, .reps = 10, .rir = 2}});
    builder.exposure(kMonday.addDays(2),
                     {{.load = 50, .reps = 10}, {.load = 50, .reps = 9}, {.load = 50, .reps = 9, .rir = 1}});
    const auto weeks = weekLoads(builder.build(), kMonday, kMonday.addDays(6));
    EXPECT_FALSE(weeks[0].effort);
    EXPECT_FALSE(weeks[0].monotony);
    EXPECT_EQ(weeks[0].sets, 4);
}

TEST(Workload, AnOpenWeekHasNoMonotonyAndAnEmptyOneIsZero)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Row")).exposure(kMonday, {{.load = 50, .reps = 10, .rir = 2}});
    builder.exposure(kMonday.addDays(14), {{.load = 50, .reps = 10, .rir = 2}});
    const auto weeks = weekLoads(builder.build(), kMonday.addDays(3), kMonday.addDays(15));
    ASSERT_EQ(weeks.size(), 3u);
    EXPECT_TRUE(weeks[0].monotony);
    EXPECT_DOUBLE_EQ(weeks[1].effort.value(), 0);
    EXPECT_FALSE(weeks[1].monotony);
    EXPECT_DOUBLE_EQ(weeks[2].effort.value(), 8);
    EXPECT_FALSE(weeks[2].closed);
    EXPECT_FALSE(weeks[2].monotony);
}

TEST(Workload, VolumeCountsBothDumbbellsAndTheBodyThatTheLoadHangsOn)
{
    LogBuilder builder;
    builder.bodyMass(kMonday, 80);
    builder.line(QStringLiteral("Curl")).loading(Loading::PerHand).exposure(kMonday, {{.load = 12, .reps = 10}});
    builder.line(QStringLiteral("Pull-up")).loading(Loading::Added).exposure(kMonday, {{.load = 10, .reps = 6}});
    builder.line(QStringLiteral("Dip")).loading(Loading::Assisted).exposure(kMonday, {{.load = 30, .reps = 5}});
    EXPECT_DOUBLE_EQ(weekLoads(builder.build(), kMonday, kMonday)[0].volumeKg, 2 * 12 * 10 + 90 * 6 + 50 * 5);
}

TEST(Workload, ADeloadIsOneThatWasPlannedOrLifted)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Row")).exposure(kMonday, {{.load = 50, .reps = 10, .kind = SetKind::Deload}});
    builder.exposure(kMonday.addDays(7), {{.load = 50, .reps = 10}});
    builder.exposure(kMonday.addDays(14), {{.load = 50, .reps = 10}});
    builder.block(kMonday.addDays(7), {{WeekKind::Normal, {}}, {WeekKind::Deload, {}}});
    const auto weeks = weekLoads(builder.build(), kMonday, kMonday.addDays(20));
    EXPECT_TRUE(weeks[0].deload);
    EXPECT_FALSE(weeks[1].deload);
    EXPECT_TRUE(weeks[2].deload);
}

// The pain-monitoring model (Thomeé 1997; Silbernagel et al. 2007; cut-offs from memory): 0-2 safe, 3-5 acceptable, over 5
// high risk.
TEST(DiscomfortZones, AreThoseOfThePainMonitoringModel)
{
    for (int rating = 0; rating <= 10; ++rating)
        EXPECT_EQ(discomfortZone(rating), rating <= 2   ? DiscomfortZone::Safe
                                          : rating <= 5 ? DiscomfortZone::Acceptable
                                                        : DiscomfortZone::High);
}

}  // namespace
}  // namespace steelyard
