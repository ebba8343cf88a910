#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

LogBuilder reserves(const std::vector<std::optional<double>>& rir)
{
    LogBuilder builder = LogBuilder().line(QStringLiteral("Arm curl"));
    const auto sessions = static_cast<int>(rir.size());
    for (int i = 0; i < sessions; ++i) {
        const MadeSet set{.load = 30, .reps = 10, .off = 0, .rir = rir[static_cast<std::size_t>(i)]};
        builder.exposure(kToday.addDays(-7 * (sessions - 1 - i)), {set, set, set});
    }
    return builder;
}

// Four weeks that ask for so many in reserve on the newest line.
void plan(LogBuilder& builder, int rir)
{
    const LiftLine line = builder.build().lines.back().line;
    Slot slot{line.variant, line.grip, line.standard};
    slot.plannedRir = Decimal::nearest(rir, 0);
    std::vector<PlannedWeek> weeks;
    for (int week = 0; week < 4; ++week)
        weeks.push_back({WeekKind::Normal, {{kToday.addDays(-21 + 7 * week), {}, {slot}}}});
    builder.block(kToday.addDays(-21), weeks);
}

TEST(EffortLowRule, SpeaksWhenSessionAfterSessionEndsFarFromFailure)
{
    const auto flags = askRule(u"effort_low", reserves({1, 5, 6, 5}).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].evidence.size(), 3u);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("5 or more"))) << flags[0].sentence.toStdString();
}

TEST(EffortLowRule, IsSilentWhenOneWasNearerOrNobodyKnows)
{
    EXPECT_TRUE(askRule(u"effort_low", reserves({5, 5, 4, 5}).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"effort_low", reserves({5, 5}).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"effort_low", reserves({{}, {}, {}, {}}).build(), kToday).empty());
    EXPECT_EQ(askRule(u"effort_low", reserves({5, 5, {}, 5}).build(), kToday).size(), 1u);
}

TEST(EffortLowRule, IsSilentWhenThePlanMeansIt)
{
    LogBuilder meant = reserves({5, 5, 5, 5});
    plan(meant, 5);
    EXPECT_TRUE(askRule(u"effort_low", meant.build(), kToday).empty());
    LogBuilder other = reserves({5, 5, 5, 5});
    plan(other, 2);
    EXPECT_EQ(askRule(u"effort_low", other.build(), kToday).size(), 1u);
}

TEST(EffortLowRule, FollowsItsSettings)
{
    const RuleSettings stricter{{{QStringLiteral("effort_low"), QStringLiteral("reserve")}, 4}};
    EXPECT_EQ(askRule(u"effort_low", reserves({4, 4, 4}).build(), kToday, stricter).size(), 1u);
    const RuleSettings longer{{{QStringLiteral("effort_low"), QStringLiteral("sessions")}, 4}};
    EXPECT_TRUE(askRule(u"effort_low", reserves({5, 5, 5}).build(), kToday, longer).empty());
}

}  // namespace
}  // namespace steelyard
