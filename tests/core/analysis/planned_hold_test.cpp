#include "core/analysis/planned_hold.h"

#include "core/analysis/regime_engine.h"
#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::madeEntry;
using testing_support::MadeSet;
using testing_support::wobble;

const QDate kMonday(2026, 6, 1);
const LiftLine kLine{Id<Athlete>(1), Id<Variant>(1), Id<Grip>(1), Id<RepStandard>(1)};

struct AskedWeek {
    double load = 40;
    RepBand band{8, 10};
    double rir = 2;
    WeekKind kind = WeekKind::Normal;
    bool withLoad = true;
};

PlannedWeek plannedWeek(const AskedWeek& asked, int number)
{
    Slot slot{.variant = kLine.variant, .grip = kLine.grip, .standard = kLine.standard, .sets = 3, .band = asked.band};
    slot.plannedRir = Decimal::nearest(asked.rir, 1);
    if (asked.withLoad) slot.load = madeEntry({.load = asked.load}).load;
    return {asked.kind, {{kMonday.addDays(7 * number), QStringLiteral("A"), {slot}}}};
}

std::vector<PlannedWeek> plannedWeeks(const std::vector<AskedWeek>& asked)
{
    std::vector<PlannedWeek> weeks;
    for (const AskedWeek& one : asked) weeks.push_back(plannedWeek(one, static_cast<int>(weeks.size())));
    return weeks;
}

bool holdsIn(const std::vector<AskedWeek>& asked, int week, const LiftLine& line = kLine)
{
    const auto log = LogBuilder().block(kMonday, plannedWeeks(asked));
    return isHoldPlanned(line, log.build().blocks, kMonday.addDays(7 * week + 3));
}

TEST(PlannedHold, IsTheSameLoadInTwoWeeksRunning)
{
    const std::vector<AskedWeek> weeks{{.load = 40}, {.load = 42.5}, {.load = 42.5}, {.load = 45}};
    EXPECT_FALSE(holdsIn(weeks, 0));
    EXPECT_TRUE(holdsIn(weeks, 1));
    EXPECT_TRUE(holdsIn(weeks, 2));
    EXPECT_FALSE(holdsIn(weeks, 3));
}

TEST(PlannedHold, IsATestWeek)
{
    EXPECT_TRUE(holdsIn({{.load = 40}, {.load = 60, .kind = WeekKind::Test}}, 1));
    EXPECT_FALSE(holdsIn({{.load = 40}, {.load = 60, .kind = WeekKind::Test}}, 0));
}

TEST(PlannedHold, NeedsThePlanToLeaveNoRoomForARise)
{
    EXPECT_FALSE(holdsIn({{.band = {8, 12}}, {.band = {8, 12}}}, 0)) << "more repetitions at one load";
    EXPECT_TRUE(holdsIn({{.band = {8, 10}}, {.band = {8, 10}}}, 0));
    EXPECT_FALSE(holdsIn({{.band = {8, 8}}, {.band = {9, 9}}}, 0)) << "a repetition more";
    EXPECT_FALSE(holdsIn({{.rir = 3}, {.rir = 1}}, 0)) << "closer to the limit";
    EXPECT_FALSE(holdsIn({{.withLoad = false}, {.withLoad = false}}, 0)) << "a load out of the record";
}

TEST(PlannedHold, IsOfItsLineAndItsWeeksOnly)
{
    LiftLine other = kLine;
    other.grip = Id<Grip>(2);
    EXPECT_FALSE(holdsIn({{}, {}}, 0, other));
    EXPECT_FALSE(holdsIn({{}, {}}, 2));
    EXPECT_FALSE(holdsIn({{}, {}}, -1));
    EXPECT_FALSE(isHoldPlanned(kLine, {}, kMonday));
}

TEST(PlannedHold, MakesAStallAHoldAndSaysSo)
{
    LogBuilder level = LogBuilder().line(QStringLiteral("Arm curl")).exposures(40, kMonday, 4, [](int i) {
        return MadeSet{.load = 40 + wobble(i), .reps = 10, .off = 0, .rir = 1};
    });
    const auto readingOf = [](const LogBuilder& builder) {
        const AthleteLog& log = builder.build();
        return RegimeEngine().read(log.lines.front(), log, kMonday);
    };
    ASSERT_EQ(readingOf(level).verdict, Verdict::Stalled);
    level.block(kMonday, plannedWeeks({{}, {}}));
    const LineReading held = readingOf(level);
    EXPECT_EQ(held.verdict, Verdict::Holding);
    EXPECT_EQ(held.reason, QStringLiteral("planned_hold"));
    EXPECT_TRUE(held.why.contains(QStringLiteral("plan"))) << qPrintable(held.why);
}

}  // namespace
}  // namespace steelyard
