#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

// One line for each number of sessions, all of one exercise; the first is the newest.
LogBuilder spreadOver(const std::vector<int>& sessions, QDate last = kToday)
{
    LogBuilder builder;
    int place = 0;
    for (const int count : sessions) {
        builder.line(QStringLiteral("Arm curl"), QStringLiteral("grip %1").arg(place));
        builder.exposures(count, last.addDays(-place), 9, [](int) { return MadeSet{.load = 40, .reps = 10}; });
        ++place;
    }
    return builder;
}

TEST(LineSwitchingRule, SpeaksWhenNoWayGetsAHistory)
{
    const auto flags = askRule(u"line_switching", spreadOver({2, 2, 2}).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].line, Id<LiftLine>(1));
    EXPECT_EQ(flags[0].evidence.size(), 3u);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("3 different ways")));
}

TEST(LineSwitchingRule, IsSilentAboutTwoWaysOrFewSessions)
{
    EXPECT_TRUE(askRule(u"line_switching", spreadOver({4, 4}).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"line_switching", spreadOver({2, 1, 1}).build(), kToday).empty());
    EXPECT_EQ(askRule(u"line_switching", spreadOver({2, 2, 1}).build(), kToday).size(), 1u);
}

TEST(LineSwitchingRule, IsSilentAboutWaysThatATrialAskedFor)
{
    AthleteLog log = spreadOver({2, 2, 2}).build();
    ASSERT_EQ(askRule(u"line_switching", log, kToday).size(), 1u);
    Trial trial{.athlete = log.athlete.id};
    for (const LineRecord& record : log.lines)
        trial.arms.push_back(
            {.variant = record.line.variant, .grip = record.line.grip, .standard = record.line.standard});
    for (const QDate date : log.sessionDates) trial.days.push_back({date, 1, 0});
    log.trials = {{Id<Trial>(1), QUuid(), trial}};
    EXPECT_TRUE(askRule(u"line_switching", log, kToday).empty());
}

TEST(LineSwitchingRule, IsSilentWhenOneWayHasEnoughSessions)
{
    EXPECT_EQ(askRule(u"line_switching", spreadOver({4, 2, 2}).build(), kToday).size(), 1u);
    EXPECT_TRUE(askRule(u"line_switching", spreadOver({5, 2, 2}).build(), kToday).empty());
}

TEST(LineSwitchingRule, IsSilentAboutLongAgoAndWithoutData)
{
    EXPECT_TRUE(askRule(u"line_switching", spreadOver({2, 2, 2}, kToday.addDays(-60)).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"line_switching", LogBuilder().build(), kToday).empty());
}

}  // namespace
}  // namespace steelyard
