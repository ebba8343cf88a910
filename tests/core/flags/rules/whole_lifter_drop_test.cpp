#include "core/flags/athlete_review.h"
#include "core/flags/reading_thresholds.h"
#include "tests/support/made_up_lifter.h"
#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::madeUpLifter;

const QDate kSunday(2026, 6, 7);

AthleteLog fallingLifter(int fallingLines, double fall = 0.012)
{
    return madeUpLifter(
        {.fallingLines = fallingLines, .fallsFromWeek = 20, .fall = fall, .turns = false, .weeks = 30, .seed = 11},
        kSunday);
}

TEST(WholeLifterDropRule, IsOneFlagForTheLifterWithEveryLineAsEvidence)
{
    const auto flags = askRule(u"whole_lifter_drop", fallingLifter(6), kSunday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_FALSE(flags[0].line);
    ASSERT_EQ(flags[0].evidence.size(), 6u);
    for (const Evidence& row : flags[0].evidence) {
        EXPECT_LT(row.value, 0.0);
        EXPECT_TRUE(row.what.contains(QStringLiteral("Lift "))) << qPrintable(row.what);
    }
    EXPECT_TRUE(flags[0].actions.contains(QStringLiteral("deload")));
    EXPECT_EQ(flags[0].actions.front(), QStringLiteral("contact_lifter"));
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("licensed professional"))) << qPrintable(flags[0].sentence);
}

TEST(WholeLifterDropRule, TakesThePlaceOfTheFlagsOfItsLines)
{
    const AthleteReview review = reviewAthlete(fallingLifter(6), RegimeEngine(), {}, kSunday);
    const auto count = [&](const char* rule) {
        return std::ranges::count_if(review.flags,
                                     [&](const Flag& flag) { return flag.rule == QString::fromLatin1(rule); });
    };
    EXPECT_EQ(count("whole_lifter_drop"), 1);
    EXPECT_EQ(count("slipping") + count("stalled"), 0);
    EXPECT_TRUE(std::ranges::any_of(review.lines,
                                    [](const LineReview& line) { return line.reading.verdict == Verdict::Slipping; }));
}

TEST(WholeLifterDropRule, LeavesOneFallingLineToItsOwnFlag)
{
    const AthleteLog log = fallingLifter(1);
    EXPECT_TRUE(askRule(u"whole_lifter_drop", log, kSunday).empty());
    EXPECT_EQ(askRule(u"slipping", log, kSunday).size(), 1u);
}

TEST(WholeLifterDropRule, BecomesHighWithTheFall)
{
    const RuleSettings low{{{QStringLiteral("whole_lifter_drop"), QStringLiteral("percent_to_high")}, 0.3}};
    const RuleSettings never{{{QStringLiteral("whole_lifter_drop"), QStringLiteral("percent_to_high")}, 10.0}};
    EXPECT_EQ(askRule(u"whole_lifter_drop", fallingLifter(6), kSunday, low).at(0).severity, Severity::High);
    EXPECT_EQ(askRule(u"whole_lifter_drop", fallingLifter(6), kSunday, never).at(0).severity, Severity::Medium);
}

TEST(WholeLifterDropRule, SharesItsCertaintyWithTheReading)
{
    EXPECT_DOUBLE_EQ(readingThresholds({}).sureOfCommonFall, VerdictThresholds{}.sureOfCommonFall);
    const RuleSettings surer{{{QStringLiteral("whole_lifter_drop"), QStringLiteral("percent")}, 95.0}};
    EXPECT_DOUBLE_EQ(readingThresholds(surer).sureOfCommonFall, 0.95);
}

TEST(WholeLifterDropRule, IsSilentAboutTwoLinesAndWithoutData)
{
    const AthleteLog two = madeUpLifter(
        {.lines = 2, .fallingLines = 2, .fallsFromWeek = 20, .fall = 0.015, .turns = false, .weeks = 30, .seed = 11},
        kSunday);
    EXPECT_TRUE(askRule(u"whole_lifter_drop", two, kSunday).empty());
    EXPECT_TRUE(askRule(u"whole_lifter_drop", LogBuilder().build(), kSunday).empty());
}

}  // namespace
}  // namespace steelyard
