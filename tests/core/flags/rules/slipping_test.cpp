#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

LogBuilder changing(double shareAWeek)
{
    double load = 60;
    return LogBuilder().line(QStringLiteral("Row")).exposures(10, kToday, 7, [&](int) {
        load *= 1 + shareAWeek;
        return MadeSet{.load = load, .reps = 8, .off = 0, .rir = 1};
    });
}

TEST(SlippingRule, SpeaksOfAFallAndSaysHowFast)
{
    const auto flags = askRule(u"slipping", changing(-0.02).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    // Ten sessions of 2 % less each are drawn towards falls as they usually are.
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("falling by about 0."))
                || flags[0].sentence.contains(QStringLiteral("falling by about 1.")))
        << flags[0].sentence.toStdString();
}

TEST(SlippingRule, BecomesHighWhenFastUnlessTheCoachSaysOtherwise)
{
    EXPECT_EQ(askRule(u"slipping", changing(-0.02).build(), kToday).at(0).severity, Severity::High);
    const RuleSettings settings{{{QStringLiteral("slipping"), QStringLiteral("percent_to_high")}, 5.0}};
    EXPECT_EQ(askRule(u"slipping", changing(-0.02).build(), kToday, settings).at(0).severity, Severity::Medium);
}

TEST(SlippingRule, IsSilentAboutARiseAndWithoutData)
{
    EXPECT_TRUE(askRule(u"slipping", changing(0.01).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"slipping", LogBuilder().build(), kToday).empty());
}

}  // namespace
}  // namespace steelyard
