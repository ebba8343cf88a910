#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

// Pairs of days: curls with so many swung repetitions, then deadlifts `apart` days later, every week.
LogBuilder weeksOf(int weeks, int swung, int apart, BackLoading second = BackLoading::High)
{
    LogBuilder builder = LogBuilder().line(QStringLiteral("Arm curl"));
    for (int week = weeks; week-- > 0;) {
        builder.exposure(kToday.addDays(-7 * week - 2 - apart),
                         {MadeSet{.load = 40, .reps = 10, .off = swung, .rir = 1}});
        if (swung > 0) builder.mark(Mark::Swing, swung);
    }
    builder.line(QStringLiteral("Deadlift")).backLoading(second);
    for (int week = weeks; week-- > 0;)
        builder.exposure(kToday.addDays(-7 * week - 2), {MadeSet{.load = 140, .reps = 5, .off = 0, .rir = 1}});
    return builder;
}

// Back work on two days running; the second day's lifts come out at so many repetitions in the last weeks.
LogBuilder backTwice(int repsLately)
{
    LogBuilder builder = LogBuilder().line(QStringLiteral("Good morning")).backLoading(BackLoading::High);
    for (int week = 3; week-- > 0;)
        builder.exposure(kToday.addDays(-7 * week - 3), {MadeSet{.load = 60, .reps = 10, .off = 0, .rir = 1}});
    builder.line(QStringLiteral("Deadlift")).backLoading(BackLoading::High);
    for (int week = 16; week-- > 0;)
        builder.exposure(kToday.addDays(-7 * week - 2),
                         {MadeSet{.load = 140, .reps = week < 3 ? repsLately : 8, .off = 0, .rir = 1}});
    return builder;
}

TEST(SpilloverFatigueRule, SpeaksWhenSwungWorkComesShortlyBeforeABackDay)
{
    const auto flags = askRule(u"spillover_fatigue", weeksOf(2, 5, 1).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_FALSE(flags[0].line);
    EXPECT_EQ(flags[0].evidence.size(), 2u);
    EXPECT_EQ(flags[0].evidence[0].value, 5);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("Deadlift"))) << flags[0].sentence.toStdString();
    EXPECT_TRUE(flags[0].actions.contains(QStringLiteral("move_day")));
}

TEST(SpilloverFatigueRule, IsSilentOnceFurtherApartWithFewSwingsOrWhereTheBackIsSpared)
{
    EXPECT_TRUE(askRule(u"spillover_fatigue", weeksOf(1, 5, 1).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"spillover_fatigue", weeksOf(3, 5, 3).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"spillover_fatigue", weeksOf(3, 4, 1).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"spillover_fatigue", weeksOf(3, 5, 1, BackLoading::Some).build(), kToday).empty());
}

TEST(SpilloverFatigueRule, SpeaksOfOrdinaryBackWorkOnlyWhenItIsPaidFor)
{
    const auto flags = askRule(u"spillover_fatigue", backTwice(6).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("lower than expected"))) << flags[0].sentence.toStdString();
    EXPECT_TRUE(askRule(u"spillover_fatigue", backTwice(8).build(), kToday).empty());
}

TEST(SpilloverFatigueRule, FollowsItsSettings)
{
    const RuleSettings apart{{{QStringLiteral("spillover_fatigue"), QStringLiteral("days_apart")}, 3}};
    EXPECT_EQ(askRule(u"spillover_fatigue", weeksOf(3, 5, 3).build(), kToday, apart).size(), 1u);
}

}  // namespace
}  // namespace steelyard
