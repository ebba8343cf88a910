#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

LogBuilder withOne(double factor, int reps = 10)
{
    return LogBuilder().line(QStringLiteral("Arm curl")).exposures(10, kToday, 4, [&](int i) {
        if (i == 7) return MadeSet{.load = 40 * factor, .reps = reps, .off = 0, .rir = 1};
        return MadeSet{.load = 40 + testing_support::wobble(i), .reps = 10, .off = 0, .rir = 1};
    });
}

QString sentenceFor(const LogBuilder& builder)
{
    const auto flags = askRule(u"implausible_entry", builder.build(), kToday);
    return flags.empty() ? QString() : flags.front().sentence;
}

TEST(ImplausibleEntryRule, GuessesThatKilogramsAndPoundsWereMixedUp)
{
    EXPECT_TRUE(sentenceFor(withOne(2.2046)).contains(QStringLiteral("pounds")));
    EXPECT_TRUE(sentenceFor(withOne(1 / 2.2046)).contains(QStringLiteral("pounds")));
}

TEST(ImplausibleEntryRule, GuessesThatTheDecimalPointMoved)
{
    EXPECT_TRUE(sentenceFor(withOne(10)).contains(QStringLiteral("decimal point")));
    EXPECT_TRUE(sentenceFor(withOne(0.1)).contains(QStringLiteral("decimal point")));
}

TEST(ImplausibleEntryRule, NamesTheEntryOnly)
{
    const auto flags = askRule(u"implausible_entry", withOne(10).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    ASSERT_EQ(flags[0].evidence.size(), 1u);
    EXPECT_EQ(flags[0].evidence[0].date, kToday.addDays(-8));
    EXPECT_NEAR(flags[0].evidence[0].value, 400.0, 1e-9);
}

TEST(ImplausibleEntryRule, SpeaksAboveItsRatioOnly)
{
    EXPECT_TRUE(sentenceFor(withOne(1.75)).isEmpty());
    EXPECT_FALSE(sentenceFor(withOne(1.85)).isEmpty());
}

TEST(ImplausibleEntryRule, SpeaksOfRepetitionsThatCantBe)
{
    EXPECT_TRUE(sentenceFor(withOne(1, 24)).isEmpty());
    EXPECT_FALSE(sentenceFor(withOne(1, 25)).isEmpty());
}

TEST(ImplausibleEntryRule, LeavesALightDayOfManyRepetitionsAlone)
{
    EXPECT_TRUE(sentenceFor(withOne(0.5, 20)).isEmpty());
    EXPECT_FALSE(sentenceFor(withOne(0.5, 10)).isEmpty());
}

TEST(ImplausibleEntryRule, IsSilentWithoutNeighboursAndWithoutData)
{
    const LogBuilder few = LogBuilder().line(QStringLiteral("Row")).exposures(3, kToday, 4, [](int i) {
        return MadeSet{.load = i == 1 ? 400.0 : 40.0, .reps = 10};
    });
    EXPECT_TRUE(sentenceFor(few).isEmpty());
    EXPECT_TRUE(sentenceFor(LogBuilder()).isEmpty());
}

}  // namespace
}  // namespace steelyard
