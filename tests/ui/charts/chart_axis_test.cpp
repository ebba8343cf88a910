#include "ui/charts/chart_axis.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

TEST(ChartAxis, StepsAreOneTwoOrFiveTimesAPowerOfTen)
{
    for (double low = -20; low < 60; low += 3.7)
        for (double span = 0.013; span < 5000; span *= 1.9) {
            const ChartAxis axis = niceAxis(low, low + span, 5);
            const double lead = axis.step / std::pow(10.0, std::floor(std::log10(axis.step) + 1e-9));
            EXPECT_TRUE(std::abs(lead - 1) < 1e-6 || std::abs(lead - 2) < 1e-6 || std::abs(lead - 5) < 1e-6)
                << axis.step;
            EXPECT_LE(axis.low, low + 1e-9);
            EXPECT_GE(axis.high, low + span - 1e-9);
            EXPECT_LE(axis.ticks.size(), 7u);  // most steps, plus one at either end
        }
}

TEST(ChartAxis, NamesTheTicksOfAnOrdinaryStretch)
{
    const ChartAxis axis = niceAxis(41.3, 52.8, 6);
    EXPECT_EQ(axis.ticks, (std::vector<double>{40, 42, 44, 46, 48, 50, 52, 54}));
    EXPECT_EQ(axis.decimals, 0);
    EXPECT_EQ(niceAxis(41.3, 42.1, 4).decimals, 1);
}

TEST(ChartAxis, GivesASingleValueRoomOnBothSides)
{
    const ChartAxis axis = niceAxis(50, 50, 5);
    EXPECT_LT(axis.low, 50);
    EXPECT_GT(axis.high, 50);
}

TEST(ChartAxis, KeepsCountsWhole)
{
    const ChartAxis axis = niceAxis(8, 9, 5, 1);
    EXPECT_EQ(axis.step, 1);
}

TEST(DateTicks, StandAtMonthStartsAndNameTheYearOnceAndInJanuary)
{
    const auto ticks = dateTicks(QDate(2026, 9, 14), QDate(2027, 3, 20), 9, QLocale::c());
    ASSERT_EQ(ticks.size(), 6u);
    EXPECT_EQ(ticks[0], (DateTick{QDate(2026, 10, 1), QStringLiteral("Oct 2026")}));
    EXPECT_EQ(ticks[1].label, QStringLiteral("Nov"));
    EXPECT_EQ(ticks[3], (DateTick{QDate(2027, 1, 1), QStringLiteral("Jan 2027")}));
}

TEST(DateTicks, NeverExceedTheirNumber)
{
    for (int days = 1; days < 4000; days += 13) {
        const QDate from(2024, 2, 29);
        const auto ticks = dateTicks(from, from.addDays(days), 8, QLocale::c());
        EXPECT_LE(ticks.size(), 8u) << days;
        for (const DateTick& tick : ticks) {
            EXPECT_GE(tick.date, from);
            EXPECT_LE(tick.date, from.addDays(days));
        }
    }
}

TEST(DateTicks, AreMondaysInAShortStretch)
{
    const auto ticks = dateTicks(QDate(2026, 9, 2), QDate(2026, 10, 2), 9, QLocale::c());
    ASSERT_EQ(ticks.size(), 4u);
    for (const DateTick& tick : ticks) EXPECT_EQ(tick.date.dayOfWeek(), 1);
}

TEST(DateTicks, OfNoStretchAreNone)
{
    EXPECT_TRUE(dateTicks({}, {}, 8, QLocale::c()).empty());
    EXPECT_TRUE(dateTicks(QDate(2026, 2, 1), QDate(2026, 1, 1), 8, QLocale::c()).empty());
}

}  // namespace
}  // namespace steelyard
