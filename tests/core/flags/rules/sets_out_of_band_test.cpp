#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

const Id<Muscle> kTriceps(1);
const Id<Muscle> kChest(2);

// Monday sessions of three weeks: so many sets of presses (triceps a half) and of extensions.
LogBuilder pressing(int presses, int extensions, SetKind kind = SetKind::Work)
{
    LogBuilder builder;
    const MadeSet set{.load = 50, .reps = 10, .off = 0, .rir = 1, .kind = kind};
    const auto train = [&](int sets) {
        for (const int back : {19, 12, 5})
            builder.exposure(kToday.addDays(-back), std::vector<MadeSet>(static_cast<std::size_t>(sets), set));
    };
    builder.line(QStringLiteral("Bench press")).trains(kChest, QStringLiteral("chest"), 1);
    builder.trains(kTriceps, QStringLiteral("triceps"), 0.5);
    if (presses > 0) train(presses);
    builder.line(QStringLiteral("Extension")).trains(kTriceps, QStringLiteral("triceps"), 1);
    if (extensions > 0) train(extensions);
    return builder;
}

TEST(SetsOutOfBandRule, SpeaksBelowAndAboveTheBand)
{
    const auto low = askRule(u"sets_out_of_band", pressing(4, 3).aim(kTriceps, 8, 16).build(), kToday);
    ASSERT_EQ(low.size(), 1u);
    EXPECT_FALSE(low[0].line);
    EXPECT_EQ(low[0].severity, Severity::Low);
    EXPECT_DOUBLE_EQ(low[0].evidence.at(0).value, 5.0);
    EXPECT_EQ(low[0].actions, QStringList{QStringLiteral("add_set")});
    EXPECT_TRUE(low[0].sentence.contains(QStringLiteral("triceps"))) << low[0].sentence.toStdString();
    const auto high = askRule(u"sets_out_of_band", pressing(10, 8).aim(kTriceps, 4, 8).build(), kToday);
    ASSERT_EQ(high.size(), 1u);
    EXPECT_EQ(high[0].severity, Severity::Medium);
    EXPECT_EQ(high[0].actions, QStringList{QStringLiteral("drop_set")});
}

TEST(SetsOutOfBandRule, IsSilentInTheBandAndWithoutOne)
{
    EXPECT_TRUE(askRule(u"sets_out_of_band", pressing(4, 3).aim(kTriceps, 4, 8).build(), kToday).empty());
    EXPECT_TRUE(askRule(u"sets_out_of_band", pressing(1, 1).build(), kToday).empty());
    // Within the tolerance of a tenth: 4.5 is under 5, but not by more.
    EXPECT_TRUE(askRule(u"sets_out_of_band", pressing(3, 3).aim(kTriceps, 5, 8).build(), kToday).empty());
}

TEST(SetsOutOfBandRule, IsSilentAboutEasyWeeksAndMissingOnes)
{
    EXPECT_TRUE(
        askRule(u"sets_out_of_band", pressing(4, 3, SetKind::Deload).aim(kTriceps, 8, 16).build(), kToday).empty());
    LogBuilder easy = pressing(4, 3).aim(kTriceps, 8, 16);
    easy.block(kToday.addDays(-20), {{WeekKind::Normal, {}}, {WeekKind::Deload, {}}, {WeekKind::Normal, {}}});
    EXPECT_TRUE(askRule(u"sets_out_of_band", easy.build(), kToday).empty());
    EXPECT_TRUE(askRule(u"sets_out_of_band", pressing(4, 3).aim(kTriceps, 8, 16).build(), kToday.addDays(7)).empty());
}

TEST(SetsOutOfBandRule, FollowsItsSettings)
{
    const auto log = pressing(3, 3).aim(kTriceps, 5, 8);
    const RuleSettings exact{{{QStringLiteral("sets_out_of_band"), QStringLiteral("tolerance")}, 0}};
    EXPECT_EQ(askRule(u"sets_out_of_band", log.build(), kToday, exact).size(), 1u);
}

}  // namespace
}  // namespace steelyard
