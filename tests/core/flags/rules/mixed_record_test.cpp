#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

LogBuilder withOff(std::optional<int> offOfTwelve)
{
    return LogBuilder().line(QStringLiteral("Arm curl")).exposures(12, kToday, 4, [&](int) {
        return MadeSet{.load = 40, .reps = 12, .off = offOfTwelve, .rir = 1};
    });
}

TEST(MixedRecordRule, SpeaksAboveAThirdOffStandard)
{
    EXPECT_TRUE(askRule(u"mixed_record", withOff(4).build(), kToday).empty());
    const auto flags = askRule(u"mixed_record", withOff(5).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("20 of the last 48")));
    ASSERT_EQ(flags[0].evidence.size(), 4u);
    EXPECT_NEAR(flags[0].evidence[0].value, 100 * 5.0 / 12, 1e-9);
}

TEST(MixedRecordRule, BecomesHighAtSixtyPercent)
{
    EXPECT_EQ(askRule(u"mixed_record", withOff(7).build(), kToday).at(0).severity, Severity::Medium);
    EXPECT_EQ(askRule(u"mixed_record", withOff(8).build(), kToday).at(0).severity, Severity::High);
}

TEST(MixedRecordRule, NamesTheMarkThatWasMadeMostOften)
{
    LogBuilder builder = withOff(6);
    builder.mark(Mark::Swing, 5).mark(Mark::ShortTop, 2);
    EXPECT_TRUE(
        askRule(u"mixed_record", builder.build(), kToday).at(0).sentence.contains(QStringLiteral("body swing")));
}

TEST(MixedRecordRule, IsSilentAboutUnwatchedSetsOldLinesAndWithoutData)
{
    EXPECT_TRUE(askRule(u"mixed_record", withOff(std::nullopt).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"mixed_record", withOff(8).build(), kToday.addDays(57)).empty());
    EXPECT_TRUE(askRule(u"mixed_record", LogBuilder().build(), kToday).empty());
}

}  // namespace
}  // namespace steelyard
