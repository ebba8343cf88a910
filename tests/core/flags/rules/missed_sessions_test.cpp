#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;

const QDate kToday(2026, 6, 1);

// Sessions on these days before today, and twelve weeks of two a week before the last two weeks.
LogBuilder lately(const std::vector<int>& daysAgo)
{
    LogBuilder builder;
    for (int week = 2; week < 14; ++week)
        builder.session(kToday.addDays(-7 * week)).session(kToday.addDays(-7 * week - 3));
    for (const int days : daysAgo) builder.session(kToday.addDays(-days));
    return builder;
}

std::vector<Flag> ask(const LogBuilder& builder)
{
    return askRule(u"missed_sessions", builder.build(), kToday);
}

TEST(MissedSessionsRule, SpeaksAtHalfOfTheUsualSessionsOrFewer)
{
    EXPECT_TRUE(ask(lately({1, 5, 9})).empty());
    const auto flags = ask(lately({1, 5}));
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].severity, Severity::Low);
    EXPECT_FALSE(flags[0].line);
}

TEST(MissedSessionsRule, IsMoreSeriousWhenNobodyCame)
{
    const auto flags = ask(lately({}));
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].severity, Severity::Medium);
    EXPECT_EQ(flags[0].evidence.at(0).value, 14.0);
    EXPECT_EQ(flags[0].actions.front(), QStringLiteral("contact_lifter"));
}

TEST(MissedSessionsRule, MeasuresByTheAgreedDaysWhenThereAreSome)
{
    EXPECT_EQ(ask(lately({1, 5, 9}).daysPerWeek(4)).size(), 1u);
    EXPECT_TRUE(ask(lately({1}).daysPerWeek(1)).empty());
}

TEST(MissedSessionsRule, MeasuresByTheBlockBeforeAnythingElse)
{
    const PlannedWeek once{WeekKind::Normal, {PlannedDay{kToday.addDays(-2), {}, {}}}};
    LogBuilder planned = lately({2}).daysPerWeek(5);
    ASSERT_EQ(ask(planned).size(), 1u);
    planned.block(kToday.addDays(-21), {once, PlannedWeek{}, PlannedWeek{}, PlannedWeek{}});
    EXPECT_TRUE(ask(planned).empty());
}

TEST(MissedSessionsRule, IsSilentAboutABeginnerAndWithoutData)
{
    EXPECT_TRUE(ask(LogBuilder().daysPerWeek(4).session(kToday.addDays(-10))).empty());
    EXPECT_TRUE(ask(LogBuilder().daysPerWeek(4)).empty());
}

}  // namespace
}  // namespace steelyard
