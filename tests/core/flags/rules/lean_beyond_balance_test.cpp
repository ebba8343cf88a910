#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

// A lifter of 1.80 m and 80 kg who curls 40 kg in two sessions: balance asks 6.7 degrees of him.
LogBuilder curlsLeaning(double degrees, const QString& position = QStringLiteral("upright"))
{
    LogBuilder builder = LogBuilder().line(QStringLiteral("Arm curl"));
    builder.trains(Id<Muscle>(1), QStringLiteral("biceps"), 1).bodyMass(kToday.addDays(-60), 80);
    builder.athlete().height = lengthFromMillimetres(1800);
    builder.athlete().sex = Sex::Male;
    Variant& variant = builder.variant();
    variant.implement = Implement::StraightBar;
    variant.travel = TravelKind::Arc;
    variant.position = position;
    for (const int daysAgo : {9, 2}) {
        builder.exposure(kToday.addDays(-daysAgo), {MadeSet{.load = 40, .reps = 9, .off = 0, .rir = 1}});
        builder.lean(degrees);
    }
    return builder;
}

TEST(LeanBeyondBalanceRule, SpeaksOfALeanThatBalanceDoesNotAskFor)
{
    const auto flags = askRule(u"lean_beyond_balance", curlsLeaning(13).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].evidence.size(), 2u);
    EXPECT_EQ(flags[0].evidence[0].value, 13);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("balance asks about 7°"))) << flags[0].sentence.toStdString();
}

TEST(LeanBeyondBalanceRule, TakesForBalanceWhatIsBalance)
{
    EXPECT_TRUE(askRule(u"lean_beyond_balance", curlsLeaning(12).build(), kToday).empty());
}

TEST(LeanBeyondBalanceRule, IsSilentAfterOneSessionAndWithoutHeightOrMass)
{
    LogBuilder once = curlsLeaning(25);
    once.newestExposure().sets.back().set.leanDegrees.reset();
    EXPECT_TRUE(askRule(u"lean_beyond_balance", once.build(), kToday).empty());
    LogBuilder unmeasured = curlsLeaning(25);
    unmeasured.athlete().height.reset();
    EXPECT_TRUE(askRule(u"lean_beyond_balance", unmeasured.build(), kToday).empty());
}

TEST(LeanBeyondBalanceRule, IsSilentWhereABackRestsOrTheElbowsDoNotBend)
{
    EXPECT_TRUE(askRule(u"lean_beyond_balance", curlsLeaning(25, QStringLiteral("seated")).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"lean_beyond_balance",
                        curlsLeaning(25, QStringLiteral("upright, back against a wall")).build(), kToday)
                    .empty());
    LogBuilder raise = curlsLeaning(25);
    raise.exercise().shares.front().share = 0.5;
    EXPECT_TRUE(askRule(u"lean_beyond_balance", raise.build(), kToday).empty());
}

TEST(LeanBeyondBalanceRule, CountsBothDumbbells)
{
    LogBuilder two = curlsLeaning(14);  // 80 kg before the body ask 9.9 degrees
    two.variant().loading = Loading::PerHand;
    EXPECT_TRUE(askRule(u"lean_beyond_balance", two.build(), kToday).empty());
    two.variant().sides = Sides::OneAtATime;
    EXPECT_EQ(askRule(u"lean_beyond_balance", two.build(), kToday).size(), 1u);
}

TEST(LeanBeyondBalanceRule, FollowsItsSettings)
{
    const RuleSettings sooner{{{QStringLiteral("lean_beyond_balance"), QStringLiteral("degrees")}, 4}};
    EXPECT_EQ(askRule(u"lean_beyond_balance", curlsLeaning(12).build(), kToday, sooner).size(), 1u);
}

}  // namespace
}  // namespace steelyard
