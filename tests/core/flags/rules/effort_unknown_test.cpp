#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

// Each session has five working sets, `blank` of them without effort.
LogBuilder withBlanks(int blank, int sessions = 4)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl"));
    for (int session = 0; session < sessions; ++session) {
        std::vector<MadeSet> sets(5, {.load = 40, .reps = 10, .off = 0});
        for (std::size_t i = static_cast<std::size_t>(blank); i < sets.size(); ++i) sets[i].rir = 2;
        builder.exposure(kToday.addDays(4 * (session - sessions)), sets);
    }
    return builder;
}

TEST(EffortUnknownRule, SpeaksAboveSixtyPercent)
{
    EXPECT_TRUE(askRule(u"effort_unknown", withBlanks(3).build(), kToday).empty());
    const auto flags = askRule(u"effort_unknown", withBlanks(4).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("16 of the last 20")));
    EXPECT_EQ(flags[0].actions, QStringList{QStringLiteral("ask_effort")});
}

TEST(EffortUnknownRule, WaitsForEnoughSessions)
{
    EXPECT_TRUE(askRule(u"effort_unknown", withBlanks(5, 3).build(), kToday).empty());
    EXPECT_EQ(askRule(u"effort_unknown", withBlanks(5, 4).build(), kToday).size(), 1u);
}

TEST(EffortUnknownRule, TakesAFailedRepetitionForKnownEffortAndIsSilentWithoutData)
{
    const LogBuilder failed = LogBuilder().line(QStringLiteral("Row")).exposures(6, kToday, 4, [](int) {
        return MadeSet{.load = 40, .reps = 10, .failed = true};
    });
    EXPECT_TRUE(askRule(u"effort_unknown", failed.build(), kToday).empty());
    EXPECT_TRUE(askRule(u"effort_unknown", LogBuilder().build(), kToday).empty());
}

}  // namespace
}  // namespace steelyard
