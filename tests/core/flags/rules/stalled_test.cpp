#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

LogBuilder levelCurl(int sessions)
{
    return LogBuilder().line(QStringLiteral("Arm curl")).exposures(sessions, kToday, 4, [](int i) {
        return MadeSet{.load = 40 + testing_support::wobble(i), .reps = 10, .off = 0, .rir = 1};
    });
}

TEST(StalledRule, SpeaksOfALevelRecordWithItsEvidence)
{
    const auto flags = askRule(u"stalled", levelCurl(20).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].rule, QStringLiteral("stalled"));
    EXPECT_EQ(flags[0].line, Id<LiftLine>(1));
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("Arm curl")));
    ASSERT_EQ(flags[0].evidence.size(), 6u);
    EXPECT_EQ(flags[0].evidence.back().date, kToday);
}

TEST(StalledRule, BecomesHighAfterSixteenWeeks)
{
    EXPECT_EQ(askRule(u"stalled", levelCurl(26).build(), kToday).at(0).severity, Severity::Medium);  // 100 days
    EXPECT_EQ(askRule(u"stalled", levelCurl(44).build(), kToday).at(0).severity, Severity::High);    // 172 days
}

TEST(StalledRule, IsSilentWhileItCantBeToldAndWithoutData)
{
    EXPECT_TRUE(askRule(u"stalled", levelCurl(8).build(), kToday).empty());  // 28 days
    EXPECT_TRUE(askRule(u"stalled", LogBuilder().build(), kToday).empty());
}

}  // namespace
}  // namespace steelyard
