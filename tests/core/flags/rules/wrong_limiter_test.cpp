#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);
const Id<Muscle> kBiceps(1);
const Id<Muscle> kForearm(2);

// What gave out, oldest first, a session every four days.
LogBuilder limitedBy(const QStringList& gaveOut, int reps = 10)
{
    LogBuilder builder = LogBuilder().line(QStringLiteral("Arm curl"));
    builder.trains(kBiceps, QStringLiteral("biceps"), 1).trains(kForearm, QStringLiteral("forearm_flexors"), 0.5);
    for (qsizetype i = 0; i < gaveOut.size(); ++i) {
        builder.exposure(kToday.addDays(-4 * (gaveOut.size() - 1 - i)),
                         {MadeSet{.load = 30, .reps = reps, .off = 0, .rir = 1}});
        builder.felt({}, {}, {}, gaveOut[i]);
    }
    return builder;
}

const QString kTarget = QStringLiteral("target");
const QString kOther = QStringLiteral("forearm_flexors");

TEST(WrongLimiterRule, SpeaksWhenHalfOfTheRatedSessionsEndedElsewhere)
{
    const auto flags = askRule(u"wrong_limiter", limitedBy({kTarget, kOther, kTarget, kOther, kOther}).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].line, Id<LiftLine>(1));
    EXPECT_EQ(flags[0].severity, Severity::Low);
    EXPECT_EQ(flags[0].evidence.size(), 5u);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("3 of the last 5"))) << flags[0].sentence.toStdString();
    EXPECT_TRUE(flags[0].sentence.contains(kOther)) << flags[0].sentence.toStdString();
    EXPECT_FALSE(flags[0].sentence.contains(QStringLiteral("lower rep band")));
    EXPECT_EQ(
        askRule(u"wrong_limiter", limitedBy({kOther, kOther, kOther, kOther, kOther}).build(), kToday).at(0).severity,
        Severity::Medium);
}

TEST(WrongLimiterRule, IsSilentBelowHalfOrWithFewRatings)
{
    EXPECT_TRUE(
        askRule(u"wrong_limiter", limitedBy({kTarget, kOther, kTarget, kTarget, kOther}).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"wrong_limiter", limitedBy({kOther, kOther, kOther, kOther}).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"wrong_limiter", limitedBy({{}, {}, {}, {}, kOther}).build(), kToday).empty());
}

TEST(WrongLimiterRule, IsSilentAboutLongAgo)
{
    const auto log = limitedBy({kOther, kOther, kOther, kOther, kOther});
    EXPECT_TRUE(askRule(u"wrong_limiter", log.build(), kToday.addDays(53)).empty());
    EXPECT_EQ(askRule(u"wrong_limiter", log.build(), kToday.addDays(39)).size(), 1u);
}

TEST(WrongLimiterRule, FollowsItsSettings)
{
    const RuleSettings strict{{{QStringLiteral("wrong_limiter"), QStringLiteral("ratings")}, 6}};
    EXPECT_TRUE(
        askRule(u"wrong_limiter", limitedBy({kOther, kOther, kOther, kOther, kOther}).build(), kToday, strict).empty());
    const RuleSettings lenient{{{QStringLiteral("wrong_limiter"), QStringLiteral("percent")}, 30}};
    EXPECT_EQ(askRule(u"wrong_limiter",
                      limitedBy({kTarget, kTarget, kTarget, kTarget, kTarget, kOther, kOther, kOther}).build(), kToday,
                      lenient)
                  .size(),
              1u);
}

// Common practice: above twenty repetitions the forearm often gives out before the biceps.
TEST(WrongLimiterRule, SuggestsFewerRepetitionsWhereTheyAreMany)
{
    const auto flags =
        askRule(u"wrong_limiter", limitedBy({kOther, kOther, kOther, kOther, kOther}, 24).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_EQ(flags[0].actions.front(), QStringLiteral("change_band"));
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("lower rep band"))) << flags[0].sentence.toStdString();
}

}  // namespace
}  // namespace steelyard
