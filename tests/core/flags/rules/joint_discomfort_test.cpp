#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

LogBuilder rated(const std::vector<int>& elbow)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl"));
    const auto count = static_cast<int>(elbow.size());
    for (int i = 0; i < count; ++i) {
        builder.exposure(kToday.addDays(4 * (i + 1 - count)), {MadeSet{.load = 40, .reps = 10, .off = 0, .rir = 1}});
        builder.discomfort(Joint::Elbow, elbow[static_cast<std::size_t>(i)]);
    }
    return builder;
}

std::vector<Flag> ask(const LogBuilder& builder, QDate asOf = kToday)
{
    return askRule(u"joint_discomfort", builder.build(), asOf);
}

TEST(JointDiscomfortRule, SpeaksOfFourTwiceRunning)
{
    EXPECT_TRUE(ask(rated({3, 4})).empty());
    const auto flags = ask(rated({4, 4}));
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].severity, Severity::Medium);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("elbow")));
}

TEST(JointDiscomfortRule, SpeaksOfMoreThanFiveOnce)
{
    EXPECT_TRUE(ask(rated({0, 5})).empty());
    const auto flags = ask(rated({0, 6}));
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].severity, Severity::High);
    EXPECT_EQ(flags[0].actions.front(), QStringLiteral("refer_out"));
}

TEST(JointDiscomfortRule, AlwaysEndsWithTheCaution)
{
    EXPECT_TRUE(ask(rated({4, 5})).at(0).sentence.endsWith(QStringLiteral("see a licensed professional.")));
    EXPECT_TRUE(ask(rated({8})).at(0).sentence.endsWith(QStringLiteral("see a licensed professional.")));
}

TEST(JointDiscomfortRule, RestsOnceItHasSettledTwice)
{
    EXPECT_EQ(ask(rated({8, 1})).size(), 1u);
    EXPECT_TRUE(ask(rated({8, 1, 0})).empty());
}

TEST(JointDiscomfortRule, LooksBackThreeWeeks)
{
    EXPECT_EQ(ask(rated({8}), kToday.addDays(20)).size(), 1u);
    EXPECT_TRUE(ask(rated({8}), kToday.addDays(21)).empty());
}

TEST(JointDiscomfortRule, JoinsTwoJointsOfOneLineIntoOneFlag)
{
    const auto flags = ask(rated({7}).discomfort(Joint::Wrist, 9));
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].evidence.size(), 2u);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("elbow")));
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("wrist")));
}

TEST(JointDiscomfortRule, DoesNotTakeUnratedForZero)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl"));
    builder.exposure(kToday.addDays(-8), {{.load = 40, .reps = 10}}).discomfort(Joint::Elbow, 4);
    builder.exposure(kToday.addDays(-4), {{.load = 40, .reps = 10}});
    builder.exposure(kToday, {{.load = 40, .reps = 10}}).discomfort(Joint::Elbow, 4);
    EXPECT_EQ(ask(builder).size(), 1u);
    EXPECT_TRUE(ask(LogBuilder()).empty());
}

}  // namespace
}  // namespace steelyard
