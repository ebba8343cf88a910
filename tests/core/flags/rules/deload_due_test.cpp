#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

// A session a week for so many weeks up to today.
LogBuilder weekly(int weeks, SetKind lastKind = SetKind::Work)
{
    LogBuilder builder = LogBuilder().line(QStringLiteral("Row"));
    for (int i = 0; i < weeks; ++i)
        builder.exposure(kToday.addDays(-7 * (weeks - 1 - i)),
                         {MadeSet{.load = 60 + 0.2 * i,
                                  .reps = 10,
                                  .off = 0,
                                  .rir = 1,
                                  .kind = i + 1 == weeks ? lastKind : SetKind::Work}});
    return builder;
}

TEST(DeloadDueRule, SpeaksAfterSixWeeksWithASign)
{
    const auto flags = askRule(u"deload_due", weekly(6).soreAfter(7).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_FALSE(flags[0].line);
    EXPECT_EQ(flags[0].severity, Severity::Medium);
    EXPECT_EQ(flags[0].evidence.back().value, 6);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("soreness"))) << flags[0].sentence.toStdString();
    LogBuilder aching = weekly(6).discomfort(Joint::Elbow, 3);
    EXPECT_TRUE(askRule(u"deload_due", aching.build(), kToday).empty());
    aching.line(QStringLiteral("Curl")).exposure(kToday.addDays(-1), {MadeSet{.load = 30, .reps = 10}});
    EXPECT_EQ(askRule(u"deload_due", aching.discomfort(Joint::Wrist, 3).build(), kToday).size(), 1u);
}

TEST(DeloadDueRule, IsSilentWithoutASignOrSooner)
{
    EXPECT_TRUE(askRule(u"deload_due", weekly(6).soreAfter(5).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"deload_due", weekly(5).soreAfter(7).build(), kToday).empty());
}

TEST(DeloadDueRule, SpeaksWithoutASignAfterVeryManyWeeks)
{
    EXPECT_TRUE(askRule(u"deload_due", weekly(15).build(), kToday).empty());
    const auto flags = askRule(u"deload_due", weekly(16).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
}

TEST(DeloadDueRule, AnEasyWeekOrABreakBeginsTheCountAnew)
{
    EXPECT_TRUE(askRule(u"deload_due", weekly(18, SetKind::Deload).build(), kToday).empty());
    LogBuilder broken = LogBuilder().line(QStringLiteral("Row"));
    for (const int weeksBack : {12, 11, 10, 9, 8, 7, 6, 5, 3, 2, 1, 0})  // the fourth week back is missing
        broken.exposure(kToday.addDays(-7 * weeksBack), {MadeSet{.load = 60, .reps = 10, .off = 0, .rir = 1}});
    EXPECT_TRUE(askRule(u"deload_due", broken.soreAfter(8).build(), kToday).empty());
    LogBuilder planned = weekly(18);
    planned.block(kToday.addDays(-14), {{WeekKind::Normal, {}}, {WeekKind::Deload, {}}, {WeekKind::Normal, {}}});
    EXPECT_TRUE(askRule(u"deload_due", planned.build(), kToday).empty());
}

TEST(DeloadDueRule, IsSilentWhenOneIsPlannedSoon)
{
    const auto withEasyWeekIn = [](int weeks) {
        LogBuilder builder = weekly(18);
        std::vector<PlannedWeek> plan(static_cast<std::size_t>(weeks), {WeekKind::Normal, {}});
        plan.push_back({WeekKind::Deload, {}});
        builder.block(kToday, plan);
        return builder;
    };
    EXPECT_TRUE(askRule(u"deload_due", withEasyWeekIn(2).build(), kToday).empty());
    EXPECT_EQ(askRule(u"deload_due", withEasyWeekIn(3).build(), kToday).size(), 1u);
}

// Two of three stall: a sign. One of one isn't.
TEST(DeloadDueRule, ManyStalledLiftsAreASign)
{
    const auto stalledLines = [](int lines) {
        LogBuilder builder;
        for (int line = 0; line < lines; ++line)
            builder.line(QStringLiteral("Lift %1").arg(line)).exposures(22, kToday.addDays(-line), 4, [](int i) {
                return MadeSet{.load = 40 + testing_support::wobble(i), .reps = 10, .off = 0, .rir = 1};
            });
        return builder;
    };
    EXPECT_TRUE(askRule(u"deload_due", stalledLines(1).build(), kToday).empty());
    const auto flags = askRule(u"deload_due", stalledLines(2).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].evidence.front().value, 2);
}

TEST(DeloadDueRule, FollowsItsSettings)
{
    const RuleSettings sooner{{{QStringLiteral("deload_due"), QStringLiteral("weeks")}, 4}};
    EXPECT_EQ(askRule(u"deload_due", weekly(4).soreAfter(7).build(), kToday, sooner).size(), 1u);
}

}  // namespace
}  // namespace steelyard
