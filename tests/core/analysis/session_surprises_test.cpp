#include "core/analysis/session_surprises.h"

#include "core/analysis/regime_engine.h"
#include "tests/support/made_up_lifter.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;
using testing_support::madeUpLifter;

const QDate kSunday(2026, 6, 7);

TEST(SessionSurprises, AreThoseOfTheLastEightWeeksAndCentredOnHonestLogs)
{
    double sum = 0;
    double squares = 0;
    int count = 0;
    for (unsigned seed = 1; seed <= 10; ++seed) {
        const AthleteLog log = madeUpLifter({.seed = 300 + seed}, kSunday);
        for (const LineReading& reading : RegimeEngine().readAll(log, kSunday)) {
            EXPECT_EQ(reading.surprises.size(), 16u);
            for (const SessionSurprise& one : reading.surprises) {
                EXPECT_GE(one.date, kSunday.addDays(-56));
                sum += one.errorSds;
                squares += one.errorSds * one.errorSds;
                ++count;
            }
        }
    }
    EXPECT_NEAR(sum / count, 0, 0.15);
    // These lifters report their reserve without error, and the standard deviation reckons with one: they stay within it.
    const double spread = std::sqrt(squares / count);
    EXPECT_GT(spread, 0.3);
    EXPECT_LT(spread, 1.0);
}

TEST(SessionSurprises, AreOfTheFirstWorkingSetThatSpeaksExactly)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Row"));
    for (int i = 0; i < 20; ++i)
        builder.exposure(kSunday.addDays(-4 * (19 - i)), {{.load = 20, .reps = 10, .kind = SetKind::WarmUp},
                                                          {.load = 40, .reps = 10, .rir = 8},
                                                          {.load = 40, .reps = 12, .off = i % 2, .rir = 1},
                                                          {.load = 40, .reps = 11, .off = 0, .rir = 1}});
    const auto readings = RegimeEngine().readAll(builder.build(), kSunday);
    ASSERT_FALSE(readings[0].surprises.empty());
    for (const SessionSurprise& one : readings[0].surprises) {
        EXPECT_NE(one.reps, 10);
        EXPECT_TRUE(one.watched);
    }
    const LogBuilder empty = LogBuilder().line(QStringLiteral("Row"));
    const LineReading few = RegimeEngine().read(empty.build().lines.front(), empty.build(), kSunday);
    EXPECT_TRUE(few.surprises.empty());
}

TEST(SessionSurprises, AreTheSameWhenTheReadingGoesOnFromWhatIsKept)
{
    const AthleteLog log = madeUpLifter({.lines = 3, .seed = 8}, kSunday);
    const RegimeEngine engine;
    for (const int daysBefore : {3, 20, 50, 120}) {
        ReadingMemory memory;
        (void)engine.readAll(log, kSunday.addDays(-daysBefore), memory);
        const auto kept = engine.readAll(log, kSunday, memory);
        const auto fresh = engine.readAll(log, kSunday);
        for (std::size_t i = 0; i < fresh.size(); ++i) {
            ASSERT_FALSE(fresh[i].surprises.empty());
            EXPECT_EQ(kept[i].surprises, fresh[i].surprises) << daysBefore;
        }
    }
}

}  // namespace
}  // namespace steelyard
