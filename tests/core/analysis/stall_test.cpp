#include "core/analysis/stall.h"

#include "core/analysis/robust_trend_engine.h"
#include "tests/support/made_up_progress.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

using testing_support::madeUpProgress;
using testing_support::ProgressCase;

const QDate kLastDay(2026, 5, 31);
constexpr double kWorthwhile = 0.0015;

// Sessions every `everyDays` days up to the last day; level(i) is ln of capacity in percent.
template <class Level>
std::vector<DatedEstimate> stallSeries(int count, int everyDays, Level level)
{
    std::vector<DatedEstimate> points;
    for (int i = 0; i < count; ++i)
        points.push_back(
            {kLastDay.addDays(-everyDays * (count - 1 - i)), SetEstimate{4.0 + 0.01 * level(i), 0.0, true}});
    return points;
}

double seesaw(int i)
{
    return i % 2 == 0 ? 1.0 : -1.0;
}

TEST(Stall, NeedsEightSessionsAndEightWeeksOfThem)
{
    const VerdictThresholds limits;
    EXPECT_TRUE(stallOf(stallSeries(20, 4, seesaw), kLastDay, kWorthwhile, limits));
    EXPECT_FALSE(stallOf(stallSeries(30, 2, seesaw), kLastDay, kWorthwhile, limits));   // 58 days: not a week ago
    EXPECT_FALSE(stallOf(stallSeries(20, 14, seesaw), kLastDay, kWorthwhile, limits));  // six in twelve weeks
    EXPECT_FALSE(stallOf({}, kLastDay, kWorthwhile, limits));
}

TEST(Stall, IsNotSaidWhileARiseWorthWaitingForIsPossible)
{
    // The same level record, once with sessions that differ by a third of a percent and once by nearly three. It reads the
    // same from either end, so it has no slope.
    const auto level = [](double percent) {
        return [percent](int i) { return percent * std::sin(7.3 * (i - 9.5) * (i - 9.5)); };
    };
    EXPECT_TRUE(stallOf(stallSeries(20, 4, level(0.5)), kLastDay, kWorthwhile, {}));
    EXPECT_FALSE(stallOf(stallSeries(20, 4, level(4)), kLastDay, kWorthwhile, {}));
}

TEST(Stall, AnswersForTheSmallestRiseThatIsAskedAbout)
{
    const auto slow = stallSeries(20, 4, [](int i) { return 0.06 * i + 0.3 * seesaw(i); });  // 0.1 % a week
    EXPECT_TRUE(stallOf(slow, kLastDay, 0.003, {}));
    EXPECT_FALSE(stallOf(slow, kLastDay, 0.0005, {}));
}

TEST(Stall, OutlivesAGoodSessionButNotARise)
{
    auto points = stallSeries(26, 4, seesaw);
    ASSERT_TRUE(stallOf(points, kLastDay, kWorthwhile, {}));
    points.back().estimate.lnSystem += 0.05;
    EXPECT_TRUE(stallOf(points, kLastDay, kWorthwhile, {}));
    for (std::size_t i = 1; i <= 8; ++i)
        points[points.size() - i].estimate.lnSystem += 0.01 * static_cast<double>(9 - i);
    EXPECT_FALSE(stallOf(points, kLastDay, kWorthwhile, {}));
}

TEST(Stall, OutlivesSomeMissedSessions)
{
    // Twelve level weeks of one session each, then one in two weeks: at last seven in twelve weeks.
    std::vector<DatedEstimate> points;
    for (int i = 0; i < 17; ++i) {
        const int daysBefore = i < 12 ? 70 + 7 * (11 - i) : 14 * (16 - i);
        points.push_back({kLastDay.addDays(-daysBefore), SetEstimate{4.0 + 0.003 * seesaw(i), 0.0, true}});
    }
    const auto stall = stallOf(points, kLastDay, kWorthwhile, {});
    ASSERT_TRUE(stall);
    EXPECT_LT(std::ssize(*stall), VerdictThresholds().stallExposures);
}

TEST(Stall, IsReadFromTheLastTwelveWeeksOnly)
{
    const auto stall = stallOf(stallSeries(60, 4, seesaw), kLastDay, kWorthwhile, {});
    ASSERT_TRUE(stall);
    EXPECT_EQ(stall->size(), 21u);
    EXPECT_GT(stall->front().date, kLastDay.addDays(-7 * 12));
    EXPECT_EQ(stall->back().date, kLastDay);
}

struct StallCount {
    int looks = 0;
    int stalled = 0;
    int slipping = 0;
    int afterStalled = 0;  // looks a week after a stalled one
    int stayed = 0;
};

// Weekly looks from week `from` on, over 25 made-up series.
StallCount countStalls(ProgressCase c, int from)
{
    StallCount count;
    const RobustTrendEngine engine;
    for (unsigned seed = 1; seed <= 25; ++seed) {
        c.seed = seed;
        const AthleteLog log = madeUpProgress(c, kLastDay);
        bool before = false;
        for (int week = from; week <= c.weeks; ++week) {
            const QDate day = kLastDay.addDays(-7 * (c.weeks - week));
            const Verdict verdict = engine.read(log.lines.front(), log, day).verdict;
            const bool stalled = verdict == Verdict::Stalled;
            ++count.looks;
            count.stalled += stalled;
            count.slipping += verdict == Verdict::Slipping;
            count.afterStalled += before;
            count.stayed += before && stalled;
            before = stalled;
        }
    }
    return count;
}

// What may be asked of it: seen at simulated sessions, with room for chance; see made_up_progress.h.
TEST(Stall, IsHardlyEverSaidOfARiseOfHalfAPercentAWeek)
{
    for (const int perWeek : {1, 2}) {
        const auto count = countStalls({.risePerWeek = 0.005, .perWeek = perWeek}, 12);
        EXPECT_LE(count.stalled, count.looks / 100) << perWeek;
    }
}

TEST(Stall, IsSeldomSaidOfAnAdvancedLiftersSlowRise)
{
    const auto count = countStalls({.experience = Experience::Advanced, .risePerWeek = 0.0012}, 12);
    EXPECT_LE(count.stalled, count.looks * 15 / 100);
}

TEST(Stall, IsFoundInMostLevelRecordsAndStaysFound)
{
    const auto novice =
        countStalls({.experience = Experience::Novice, .risePerWeek = 0.012, .turnsInWeek = 10, .weeks = 44}, 26);
    EXPECT_GE(novice.stalled + novice.slipping, novice.looks * 55 / 100);
    const auto level = countStalls({.turnsInWeek = 0, .weeks = 44}, 20);
    EXPECT_GE(level.stalled + level.slipping, level.looks * 35 / 100);
    ASSERT_GT(level.afterStalled, 100);
    EXPECT_GE(level.stayed, level.afterStalled * 83 / 100);
}

TEST(Stall, AFallIsCalledSlippingOrStalledAndNotPassedOver)
{
    const auto count = countStalls({.turnsInWeek = 0, .afterTurn = -0.004}, 20);
    EXPECT_GE(count.stalled + count.slipping, count.looks * 85 / 100);
    EXPECT_GE(count.slipping, count.looks / 5);
}

}  // namespace
}  // namespace steelyard
