#include "core/analysis/counting.h"

#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kDay(2026, 3, 2);

std::vector<CountedExposure> countOf(const LogBuilder& builder)
{
    const AthleteLog& log = builder.build();
    return countExposures(log.lines.front(), log.bodyMass, kDay);
}

CountedExposure countSets(const std::vector<MadeSet>& sets)
{
    return countOf(LogBuilder().line(QStringLiteral("Arm curl")).exposure(kDay, sets)).at(0);
}

TEST(Counting, TakesTheBestSetAsTheSessionsEstimate)
{
    const auto counted =
        countSets({{.load = 40, .reps = 8, .off = 0, .rir = 2}, {.load = 40, .reps = 9, .off = 0, .rir = 3}});
    EXPECT_NEAR(counted.point.capacityKg.value(), 40 * (1 + 12.0 / 30), 1e-9);
    EXPECT_EQ(counted.point.countedReps, 9);
    EXPECT_EQ(counted.point.workSets, 2);
    EXPECT_EQ(counted.reserve, 2.0);
}

TEST(Counting, CountsOnlyRepetitionsToTheStandard)
{
    const auto counted = countSets({{.load = 40, .reps = 10, .off = 3, .rir = 0}});
    EXPECT_EQ(counted.point.countedReps, 7);
    EXPECT_NEAR(counted.point.capacityKg.value(), 40 * (1 + 7.0 / 30), 1e-9);
}

TEST(Counting, GivesNoEstimateWithoutEffortButKeepsAWeakerOne)
{
    const auto counted = countSets({{.load = 40, .reps = 10}});
    EXPECT_FALSE(counted.estimate);
    EXPECT_FALSE(counted.point.capacityKg);
    EXPECT_TRUE(counted.effortless);
}

TEST(Counting, TakesAFailedRepetitionAsNothingInReserve)
{
    EXPECT_NEAR(countSets({{.load = 40, .reps = 10, .failed = true}}).point.capacityKg.value(), 40 * (1 + 10.0 / 30),
                1e-9);
}

TEST(Counting, ReadsAReserveOfFourButNotMore)
{
    EXPECT_TRUE(countSets({{.load = 40, .reps = 8, .rir = 4}}).estimate);
    EXPECT_FALSE(countSets({{.load = 40, .reps = 8, .rir = 4.5}}).estimate);
    EXPECT_EQ(countSets({{.load = 40, .reps = 8, .rir = 4.5}}).effortSets, 1);
}

TEST(Counting, ReadsThirtyRepetitionsButNotMore)
{
    EXPECT_TRUE(countSets({{.load = 40, .reps = 29, .rir = 1}}).estimate);
    EXPECT_FALSE(countSets({{.load = 40, .reps = 30, .rir = 1}}).estimate);
}

TEST(Counting, LeavesWarmUpsOutAndMarksADeload)
{
    const auto counted = countOf(LogBuilder()
                                     .line(QStringLiteral("Row"))
                                     .exposure(kDay.addDays(-7), {{.load = 20, .reps = 10, .kind = SetKind::WarmUp}})
                                     .exposure(kDay, {{.load = 30, .reps = 8, .rir = 3, .kind = SetKind::Deload}}));
    ASSERT_EQ(counted.size(), 1u);
    EXPECT_TRUE(counted[0].point.deload);
    EXPECT_EQ(counted[0].point.workSets, 0);
    EXPECT_FALSE(counted[0].point.capacityKg);
}

TEST(Counting, CallsASessionOffStandardAboveAThirdOfWatchedRepetitions)
{
    EXPECT_FALSE(countSets({{.load = 40, .reps = 9, .off = 3}}).point.offStandard);
    EXPECT_TRUE(countSets({{.load = 40, .reps = 10, .off = 4}}).point.offStandard);
    EXPECT_TRUE(countSets({{.load = 40, .reps = 10, .off = 4}, {.load = 40, .reps = 10}}).point.offStandard);
}

TEST(Counting, TellsNotWatchedFromWatchedAndFine)
{
    EXPECT_FALSE(countSets({{.load = 40, .reps = 9}}).point.watched);
    EXPECT_FALSE(countSets({{.load = 40, .reps = 9}}).offShare());
    EXPECT_TRUE(countSets({{.load = 40, .reps = 9, .off = 0}}).point.watched);
    EXPECT_EQ(countSets({{.load = 40, .reps = 9, .off = 0}}).offShare(), 0.0);
}

TEST(Counting, MovesBodyMassWithAnAddedLoadAndLessOfItWithHelp)
{
    LogBuilder added;
    added.bodyMass(kDay.addDays(-30), 80).bodyMass(kDay.addDays(1), 100).line(QStringLiteral("Pull-up"));
    added.loading(Loading::Added).exposure(kDay, {{.load = 10, .reps = 6, .rir = 0}});
    EXPECT_NEAR(countOf(added).at(0).point.capacityKg.value(), 90 * 1.2 - 80, 1e-9);
    LogBuilder assisted;
    assisted.bodyMass(kDay, 80).line(QStringLiteral("Pull-up"));
    assisted.loading(Loading::Assisted).exposure(kDay, {{.load = 30, .reps = 6, .rir = 0}});
    EXPECT_NEAR(countOf(assisted).at(0).point.capacityKg.value(), 50 * 1.2 - 80, 1e-9);
}

TEST(Counting, ComparesRepetitionsAtOneLoadWhenBodyMassIsUnknown)
{
    const auto counted = countOf(LogBuilder()
                                     .line(QStringLiteral("Pull-up"))
                                     .loading(Loading::Added)
                                     .exposure(kDay.addDays(-7), {{.load = 5, .reps = 6, .rir = 0}})
                                     .exposure(kDay.addDays(-3), {{.load = 0, .reps = 8, .rir = 1}})
                                     .exposure(kDay, {{.load = 0, .reps = 9, .rir = 0}}));
    ASSERT_EQ(counted.size(), 3u);
    EXPECT_FALSE(counted[0].estimate);
    EXPECT_NEAR(counted[1].estimate.value().lnSystem, std::log(1.3), 1e-12);
    EXPECT_FALSE(counted[2].point.capacityKg);
}

TEST(Counting, LooksNoFurtherThanTheDay)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Row")).exposure(kDay, {{.load = 40, .reps = 9}});
    builder.exposure(kDay.addDays(1), {{.load = 40, .reps = 9}});
    EXPECT_EQ(countOf(builder).size(), 1u);
}

}  // namespace
}  // namespace steelyard
