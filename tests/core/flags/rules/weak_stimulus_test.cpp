#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

LogBuilder feltAs(int sessions, std::optional<int> tension, std::optional<int> burn, std::optional<int> pump)
{
    LogBuilder builder = LogBuilder().line(QStringLiteral("Arm curl"));
    for (int i = 0; i < sessions; ++i) {
        builder.exposure(kToday.addDays(-4 * (sessions - 1 - i)),
                         {MadeSet{.load = 30, .reps = 10, .off = 0, .rir = 1}});
        builder.felt(tension, burn, pump);
    }
    return builder;
}

TEST(WeakStimulusRule, SpeaksWhenEverythingStaysLow)
{
    const auto flags = askRule(u"weak_stimulus", feltAs(4, 3, 2, 1).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].evidence.size(), 4u);
    EXPECT_EQ(flags[0].evidence[0].value, 3);
    EXPECT_TRUE(flags[0].actions.contains(QStringLiteral("start_trial")));
}

TEST(WeakStimulusRule, IsSilentWhenOneOfThemIsFelt)
{
    EXPECT_TRUE(askRule(u"weak_stimulus", feltAs(4, 4, 2, 1).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"weak_stimulus", feltAs(4, 1, 2, 6).build(), kToday).empty());
}

TEST(WeakStimulusRule, IsSilentWithoutEnoughRatings)
{
    EXPECT_TRUE(askRule(u"weak_stimulus", feltAs(3, 1, 1, 1).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"weak_stimulus", feltAs(6, 1, {}, {}).build(), kToday).empty());  // one kind alone
    EXPECT_TRUE(askRule(u"weak_stimulus", feltAs(6, {}, {}, {}).build(), kToday).empty());
}

TEST(WeakStimulusRule, FollowsItsSettings)
{
    const RuleSettings higher{{{QStringLiteral("weak_stimulus"), QStringLiteral("at_most")}, 4}};
    EXPECT_EQ(askRule(u"weak_stimulus", feltAs(4, 4, 2, 1).build(), kToday, higher).size(), 1u);
}

}  // namespace
}  // namespace steelyard
