#include "core/analysis/reserve_habit.h"

#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kMonday(2026, 6, 1);

// Weeks of one planned session a week with two in reserve, of three sets that report `reported`.
AthleteLog trainedByPlan(int weeks, std::optional<double> reported, std::optional<double> planned = 2)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl"));
    std::vector<PlannedWeek> plan;
    for (int week = 0; week < weeks; ++week) {
        const QDate day = kMonday.addDays(7 * week);
        Slot slot{Id<Variant>(1), Id<Grip>(1), Id<RepStandard>(1)};
        if (planned) slot.plannedRir = Decimal::nearest(*planned, 1);
        plan.push_back({WeekKind::Normal, {{day, {}, {slot}}}});
        builder.exposure(day, std::vector<MadeSet>(3, {.load = 40, .reps = 10, .off = 0, .rir = reported}));
    }
    return builder.block(kMonday, plan).build();
}

TEST(ReserveHabit, WithoutARecordHalfARepetitionMoreIsExpected)
{
    EXPECT_DOUBLE_EQ(reserveHabit(trainedByPlan(0, 2), kMonday), kUsualHabit);
    EXPECT_DOUBLE_EQ(reserveHabit(trainedByPlan(4, std::nullopt), kMonday.addDays(60)), kUsualHabit);
    EXPECT_DOUBLE_EQ(reserveHabit(trainedByPlan(4, 3, std::nullopt), kMonday.addDays(60)), kUsualHabit);
}

TEST(ReserveHabit, IsLearnedFromWhatWasReportedWherePlanned)
{
    const QDate later = kMonday.addDays(365);
    // Thirty sets at a surplus of one beside six at half.
    EXPECT_NEAR(reserveHabit(trainedByPlan(20, 3), later), (30 * 1.0 + 6 * 0.5) / 36, 1e-12);
    EXPECT_NEAR(reserveHabit(trainedByPlan(20, 2), later), 6 * 0.5 / 36, 1e-12);
    EXPECT_LT(reserveHabit(trainedByPlan(20, 1), later), -0.7);
}

TEST(ReserveHabit, KnowsNothingOfWhatCameLater)
{
    EXPECT_NEAR(reserveHabit(trainedByPlan(20, 3), kMonday), (3 * 1.0 + 6 * 0.5) / 9, 1e-12);
}

TEST(ReserveHabit, SetsToFailureSayNothingOfIt)
{
    EXPECT_DOUBLE_EQ(reserveHabit(trainedByPlan(8, 1, 0), kMonday.addDays(365)), kUsualHabit);
}

}  // namespace
}  // namespace steelyard
