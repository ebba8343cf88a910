#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

LogBuilder endingWith(const MadeSet& last)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl")).exposures(5, kToday.addDays(-4), 4, [](int) {
        return MadeSet{.load = 40, .reps = 10, .off = 0, .rir = 1};
    });
    return builder.exposure(kToday, {last});
}

std::vector<Flag> ask(const LogBuilder& builder)
{
    return askRule(u"unsupported_jump", builder.build(), kToday);
}

TEST(UnsupportedJumpRule, SpeaksOfAJumpDoneOffStandard)
{
    const auto flags = ask(endingWith({.load = 46, .reps = 10, .off = 5, .rir = 1}));
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("15 %")));
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("50 % of the watched repetitions")));
    EXPECT_EQ(flags[0].evidence.size(), 4u);
}

TEST(UnsupportedJumpRule, IsSilentUpToTenPercent)
{
    EXPECT_TRUE(ask(endingWith({.load = 44, .reps = 10, .off = 5})).empty());
    EXPECT_EQ(ask(endingWith({.load = 44.5, .reps = 10, .off = 5})).size(), 1u);
}

TEST(UnsupportedJumpRule, SpeaksWhenTheBandIsMissedAtTheLimit)
{
    EXPECT_EQ(ask(endingWith({.load = 50, .reps = 4, .off = 0, .rir = 0})).size(), 1u);
    EXPECT_EQ(ask(endingWith({.load = 50, .reps = 4, .off = 0, .failed = true})).size(), 1u);
    EXPECT_TRUE(ask(endingWith({.load = 48, .reps = 4, .off = 0, .rir = 2})).empty());
}

TEST(UnsupportedJumpRule, SpeaksOfAClaimBeyondTheSessionsBefore)
{
    const auto flags = ask(endingWith({.load = 46, .reps = 12, .rir = 1}));
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("more strength")));
}

TEST(UnsupportedJumpRule, LeavesSlipsOfThePenToTheirOwnRule)
{
    const LogBuilder slip = endingWith({.load = 400, .reps = 10, .off = 0, .rir = 1});
    EXPECT_EQ(askRule(u"implausible_entry", slip.build(), kToday).size(), 1u);
    EXPECT_TRUE(ask(slip).empty());
}

TEST(UnsupportedJumpRule, LeavesTestsAndTheSmallestStepAlone)
{
    EXPECT_TRUE(ask(endingWith({.load = 52, .reps = 1, .off = 0, .rir = 0, .kind = SetKind::Test})).empty());
    LogBuilder coarse = endingWith({.load = 46, .reps = 10, .off = 5});
    ASSERT_EQ(ask(coarse).size(), 1u);
    EXPECT_TRUE(ask(coarse.step(6)).empty());
}

TEST(UnsupportedJumpRule, IsSilentWithoutEnoughBefore)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl")).exposure(kToday.addDays(-4), {{.load = 40, .reps = 10}});
    EXPECT_TRUE(ask(builder.exposure(kToday, {{.load = 80, .reps = 10, .off = 9}})).empty());
    EXPECT_TRUE(ask(LogBuilder()).empty());
}

}  // namespace
}  // namespace steelyard
