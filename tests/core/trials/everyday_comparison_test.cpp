#include "core/trials/everyday_comparison.h"

#include "tests/support/log_builder.h"
#include "tests/support/trial_kit.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::kTrialMonday;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const EverydaySpan kYear{QDate(2027, 1, 1), QDate(2027, 12, 31)};

void train(LogBuilder& log, QDate date, int tension, const MadeSet& set, int place)
{
    log.exposure(date, {set, set, set});
    for (LoggedSet& logged : log.newestExposure().sets) logged.position += 10 * (place - 1);
    log.felt(tension, {}, {});
}

// Two lifts for one muscle, on alternate days.
LogBuilder twoLifts(int firstTension, int secondTension, const MadeSet& secondSet, int secondPlace, int secondDaysLater)
{
    LogBuilder log;
    const MadeSet set{.load = 40, .reps = 10, .off = 0, .rir = 1};
    log.line(QStringLiteral("Arm curl"), QStringLiteral("supinated"))
        .trains(Id<Muscle>(1), QStringLiteral("biceps"), 1);
    for (int i = 0; i < 10; ++i) train(log, kTrialMonday.addDays(7 * i), firstTension + i % 2, set, 1);
    log.line(QStringLiteral("Arm curl"), QStringLiteral("neutral")).trains(Id<Muscle>(1), QStringLiteral("biceps"), 1);
    for (int i = 0; i < 10; ++i)
        train(log, kTrialMonday.addDays(7 * i + secondDaysLater), secondTension + i % 2, secondSet, secondPlace);
    return log;
}

EverydayComparison compare(const LogBuilder& log)
{
    return compareEveryday(log.build(), {log.build().lines[0].id, log.build().lines[1].id}, kYear);
}

bool names(const EverydayComparison& comparison, Circumstance kind)
{
    return std::ranges::find(comparison.circumstances, kind, &CircumstanceFound::kind)
           != comparison.circumstances.end();
}

TEST(EverydayComparison, ShowsDifferencesAndSaysThatNobodyDrewLots)
{
    const auto comparison = compare(twoLifts(5, 8, {.load = 40, .reps = 10, .off = 0, .rir = 1}, 1, 3));
    ASSERT_EQ(comparison.outcomes.size(), 1u);
    EXPECT_EQ(comparison.outcomes[0].key, u"tension");
    EXPECT_GT(comparison.outcomes[0].difference(1, 0)->low90, 1);
    EXPECT_FALSE(comparison.outcomes[0].byLot);
    EXPECT_EQ(comparison.sessions, (std::vector<int>{10, 10}));
    EXPECT_TRUE(comparison.sentence.contains(u"not by lot"));
    EXPECT_TRUE(comparison.circumstances.empty());
}

TEST(EverydayComparison, NamesWhatElseDiffered)
{
    // Second in the same session, after sets for the same muscle, in other repetitions and nearer to failure.
    const auto same = compare(twoLifts(5, 8, {.load = 20, .reps = 18, .off = 0, .rir = 3}, 2, 0));
    EXPECT_TRUE(names(same, Circumstance::Order));
    EXPECT_TRUE(names(same, Circumstance::Fatigue));
    EXPECT_TRUE(names(same, Circumstance::Reps));
    EXPECT_TRUE(names(same, Circumstance::Reserve));
    EXPECT_FALSE(names(same, Circumstance::Time));
    const auto later = compare(twoLifts(5, 8, {.load = 40, .reps = 10, .off = 0, .rir = 1}, 1, 90));
    EXPECT_TRUE(names(later, Circumstance::Time));
    EXPECT_FALSE(names(later, Circumstance::Order));
    for (const CircumstanceFound& found : same.circumstances) {
        EXPECT_FALSE(found.sentence.isEmpty());
        EXPECT_EQ(found.byLine.size(), 2u);
    }
}

TEST(EverydayComparison, OfOneLiftOrAnUnknownOneSaysWhatToChoose)
{
    const LogBuilder log = twoLifts(5, 6, {.load = 40, .reps = 10}, 1, 3);
    EXPECT_TRUE(compareEveryday(log.build(), {log.build().lines[0].id}, kYear).outcomes.empty());
    EXPECT_FALSE(compareEveryday(log.build(), {log.build().lines[0].id, Id<LiftLine>(99)}, kYear).sentence.isEmpty());
}

TEST(EverydayComparison, OutsideTheSpanNothingCounts)
{
    const LogBuilder log = twoLifts(5, 8, {.load = 40, .reps = 10}, 1, 3);
    const auto none = compareEveryday(log.build(), {log.build().lines[0].id, log.build().lines[1].id},
                                      {QDate(2026, 1, 1), QDate(2026, 2, 1)});
    EXPECT_TRUE(none.outcomes.empty());
    EXPECT_EQ(none.sessions, (std::vector<int>{0, 0}));
}

}  // namespace
}  // namespace steelyard
