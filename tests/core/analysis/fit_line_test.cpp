#include "core/analysis/fit_line.h"

#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kLastDay(2026, 6, 1);
const FitSpan kWholeYear{kLastDay.addDays(-363), kLastDay};

// Forty sessions, two a week; `make` gives the sets of one.
template <class Make>
AthleteLog fortySessions(Make make)
{
    LogBuilder builder = LogBuilder().line(QStringLiteral("Arm curl"));
    for (int i = 0; i < 40; ++i) builder.exposure(kLastDay.addDays(-3 * (39 - i)), make(i));
    return builder.build();
}

FitLine heardOf(const AthleteLog& log, FitSpan span = kWholeYear)
{
    return fitLineOf(log.lines.front(), log, {}, span);
}

TEST(FitLine, HearsEverySessionOfASoundRecord)
{
    const auto log = fortySessions([](int i) {
        return std::vector<MadeSet>{{.load = 40, .reps = 8 + i % 2, .off = 0, .rir = 1},
                                    {.load = 40, .reps = 8, .off = 0, .rir = 0}};
    });
    const FitLine line = heardOf(log);
    EXPECT_EQ(line.experience, Experience::Intermediate);
    EXPECT_EQ(line.sessions.size(), 40U);
    EXPECT_EQ(line.setsHeard(), 80);
    EXPECT_EQ(line.weeksHeard(), 18);  // from Wednesday 4 February on
    EXPECT_EQ(line.sessions.back().day, static_cast<double>(kLastDay.toJulianDay()));
    EXPECT_EQ(line.sessions.back().week, weekOf(kLastDay));
}

TEST(FitLine, LeavesOutTheWeeksThatWereNotToTheStandard)
{
    const auto log = fortySessions([](int i) {
        const int off = i >= 12 && i < 20 ? 6 : 0;
        return std::vector<MadeSet>{{.load = 40, .reps = 10, .off = off, .rir = 1}};
    });
    const auto& exposures = log.lines.front().exposures;
    const FitLine line = heardOf(log);
    EXPECT_LT(line.sessions.size(), 32U);
    EXPECT_GT(line.sessions.size(), 20U);
    const auto heardOn = [&](QDate day) {
        return std::ranges::count(line.sessions, static_cast<double>(day.toJulianDay()), &FitSession::day) == 1;
    };
    EXPECT_TRUE(heardOn(exposures[2].date));
    EXPECT_FALSE(heardOn(exposures[16].date));
    EXPECT_TRUE(heardOn(exposures[39].date));
}

TEST(FitLine, LeavesOutTheWeeksWithoutEffort)
{
    const auto log = fortySessions([](int i) {
        MadeSet set{.load = 40, .reps = 10, .off = 0};
        if (i < 20) set.rir = 1;
        return std::vector<MadeSet>{set};
    });
    const FitLine line = heardOf(log);
    ASSERT_FALSE(line.sessions.empty());
    EXPECT_LT(line.sessions.back().day, static_cast<double>(log.lines.front().exposures[26].date.toJulianDay()));
}

TEST(FitLine, LooksAtNothingOutsideItsSpan)
{
    const auto log =
        fortySessions([](int) { return std::vector<MadeSet>{{.load = 40, .reps = 10, .off = 0, .rir = 1}}; });
    const FitSpan span{kLastDay.addDays(-60), kLastDay.addDays(-10)};
    const FitLine line = heardOf(log, span);
    ASSERT_FALSE(line.sessions.empty());
    EXPECT_GE(line.sessions.front().day, static_cast<double>(span.first.toJulianDay()));
    EXPECT_LE(line.sessions.back().day, static_cast<double>(span.last.toJulianDay()));
    auto longer = log;
    longer.lines.front().exposures.erase(longer.lines.front().exposures.begin(),
                                         longer.lines.front().exposures.begin() + 5);
    longer.lines.front().exposures.pop_back();
    EXPECT_EQ(heardOf(longer, span), line);
}

}  // namespace
}  // namespace steelyard
