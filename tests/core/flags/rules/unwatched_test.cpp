#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

void addLine(LogBuilder& builder, const QString& name, int unwatched)
{
    builder.line(name).exposures(8, kToday, 4, [&](int i) {
        MadeSet set{.load = 40, .reps = 10, .rir = 1};
        if (i < 8 - unwatched) set.off = 0;
        return set;
    });
}

TEST(UnwatchedRule, SpeaksAfterFourSessionsInARow)
{
    LogBuilder three;
    addLine(three, QStringLiteral("Arm curl"), 3);
    EXPECT_TRUE(askRule(u"unwatched", three.build(), kToday).empty());
    LogBuilder four;
    addLine(four, QStringLiteral("Arm curl"), 4);
    const auto flags = askRule(u"unwatched", four.build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].severity, Severity::Low);
    EXPECT_EQ(flags[0].line, Id<LiftLine>(1));
    EXPECT_EQ(flags[0].evidence.at(0).value, 4.0);
}

TEST(UnwatchedRule, BecomesOneFlagWhenItIsAboutMostLifts)
{
    LogBuilder builder;
    addLine(builder, QStringLiteral("Arm curl"), 6);
    addLine(builder, QStringLiteral("Row"), 6);
    addLine(builder, QStringLiteral("Squat"), 0);
    const auto flags = askRule(u"unwatched", builder.build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_FALSE(flags[0].line);
    EXPECT_EQ(flags[0].evidence.size(), 2u);
}

TEST(UnwatchedRule, IsSilentWithoutData)
{
    EXPECT_TRUE(askRule(u"unwatched", LogBuilder().line(QStringLiteral("Arm curl")).build(), kToday).empty());
}

}  // namespace
}  // namespace steelyard
