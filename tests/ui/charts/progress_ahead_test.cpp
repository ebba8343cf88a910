// What stands behind today, and what tells a change from chance.
#include "tests/support/made_up_reading.h"
#include "tests/support/progress_case.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

using testing_support::ProgressCase;

CapacityAhead aheadOn(QDate date, double kg)
{
    return {date, kg, kg - 1, kg + 1, kg - 2, kg + 2, kg - 4, kg + 4};
}

ProgressCase withFan(int weeks = 6)
{
    ProgressCase c;
    c.reading = madeUpReading(40);
    c.options.asOf = c.reading.points.back().date.addDays(3);
    for (int week = 0; week <= weeks; ++week) c.ahead.push_back(aheadOn(c.options.asOf.addDays(7 * week), 50));
    return c;
}

TEST(ProgressAhead, IsDatedAndStandsWithinBothAxes)
{
    ProgressCase c = withFan();
    const ProgressSpec spec = c.build();
    ASSERT_EQ(spec.fan.size(), 7u);
    EXPECT_EQ(spec.fan.front().day, chartDay(c.options.asOf));
    EXPECT_EQ(spec.fan.back().day, chartDay(c.options.asOf.addDays(42)));
    EXPECT_GT(spec.to, c.options.asOf.addDays(42));
    EXPECT_EQ(spec.fan[2].low, (std::array<double, 3>{46, 48, 49}));
    EXPECT_EQ(spec.fan[2].high, (std::array<double, 3>{54, 52, 51}));
    EXPECT_LE(spec.capacity.axis.low, 46);
    EXPECT_GE(spec.capacity.axis.high, 54);
    EXPECT_TRUE(spec.summary.contains(QStringLiteral("likely show 50.0 kg (80 % interval 48.0 to 52.0)")))
        << spec.summary.toStdString();
}

TEST(ProgressAhead, IsInTheLiftersUnit)
{
    ProgressCase c = withFan();
    c.options.unit = MassUnit::lb;
    EXPECT_NEAR(c.build().fan[0].median, 50 / 0.45359237, 1e-9);
}

TEST(ProgressAhead, IsNotDrawnOfALineThatRests)
{
    ProgressCase c = withFan();
    c.options.nextSet = false;
    const ProgressSpec spec = c.build();
    EXPECT_TRUE(spec.fan.empty());
    EXPECT_LT(spec.to, c.options.asOf.addDays(21));
    EXPECT_FALSE(spec.summary.contains(QStringLiteral("likely")));
}

// Capacities that alternate by d in ln differ from one session to the next by +d and -d: the standard deviation of these
// is d sqrt(n / (n - 1)) about, and the limits of nine in ten 1.645 times that.
ProgressCase alternating(int sessions, double d)
{
    ProgressCase c;
    const QDate first(2026, 1, 5);
    for (int i = 0; i < sessions; ++i) {
        const double kg = 50 * std::exp(i % 2 == 0 ? 0 : d);
        c.session(first.addDays(3 * i), {{.load = 40, .reps = 8, .off = 0, .rir = 1}}, kg);
        c.reading.trend.push_back({first.addDays(3 * i), 51, 49, 53});
    }
    return c;
}

TEST(RealChange, IsTheTypicalErrorOfThisLinesSessionsAroundWhatWasKnownAtTheStart)
{
    ProgressCase c = alternating(21, 0.03);
    const ProgressSpec spec = c.build();
    ASSERT_TRUE(spec.realChange);
    EXPECT_EQ(spec.realChange->pairs, 20);
    const double sd = 0.03 * std::sqrt(20.0 / 19.0);
    EXPECT_NEAR(spec.realChange->typicalError, sd / std::sqrt(2.0), 1e-9);
    EXPECT_NEAR(spec.realChange->high, 51 * std::exp(1.644854 * sd), 1e-4);
    EXPECT_NEAR(spec.realChange->low, 51 * std::exp(-1.644854 * sd), 1e-4);
    EXPECT_EQ(spec.realChange->from, QDate(2026, 1, 5));
    EXPECT_TRUE(spec.summary.contains(QStringLiteral("typical error of a session is 2.2 % (from 20 pair")))
        << spec.summary.toStdString();
}

TEST(RealChange, BeginsWithTheLastBlockThatHasSomeWeeks)
{
    ProgressCase c = alternating(31, 0.03);
    Block block{Id<Athlete>(1), QStringLiteral("Spring"), {}, QDate(2026, 2, 2), {}};
    block.weeks.resize(4);
    c.blocks.push_back({Id<Block>(1), {}, block});
    block.start = QDate(2026, 3, 30);  // a week before the end
    c.blocks.push_back({Id<Block>(2), {}, block});
    const ProgressSpec spec = c.build();
    ASSERT_TRUE(spec.realChange);
    EXPECT_GE(spec.realChange->from, QDate(2026, 2, 2));
    EXPECT_LT(spec.realChange->from, QDate(2026, 2, 6));
}

TEST(RealChange, SaysInTheTableOnWhichSideASessionLies)
{
    ProgressCase c = alternating(21, 0.03);
    c.reading.points[10].capacityKg = 58;
    c.reading.points[14].capacityKg.reset();
    const ProgressSpec spec = c.build();
    ASSERT_TRUE(spec.realChange);
    ASSERT_GT(58, spec.realChange->high);
    EXPECT_EQ(spec.table.rows[10].back(), QStringLiteral("more"));
    EXPECT_EQ(spec.table.rows[3].back(), QStringLiteral("within chance"));
    EXPECT_EQ(spec.table.rows[14].back(), QString());
    for (const QStringList& row : spec.table.rows) EXPECT_EQ(row.size(), spec.table.header.size());
}

TEST(RealChange, IsNotSaidOfFewSessionsOrWhereHelpIsStillNeeded)
{
    ProgressCase few = alternating(10, 0.03);
    EXPECT_FALSE(few.build().realChange);
    ProgressCase helped = alternating(21, 0.03);
    for (ReadingPoint& point : helped.reading.points) point.capacityKg = *point.capacityKg - 60;
    EXPECT_FALSE(helped.build().realChange);
    ProgressCase untold = alternating(21, 0.03);
    untold.reading.trend.clear();
    EXPECT_FALSE(untold.build().realChange);
}

}  // namespace
}  // namespace steelyard
