// Whether plans keep their word: simulated lifters whose truth is known follow them for half a year (tests/support/plan_lifter.h).
// The short form of tests/benchmarks/plans/plan_weeks.cpp.
#include "tests/support/plan_following.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::Equipment;
using testing_support::FollowCase;
using testing_support::Followed;
using testing_support::FollowedSet;
using testing_support::followPlan;
using testing_support::HitShare;

constexpr std::array<RepBand, 3> kFollowedBands{{{5, 8}, {8, 12}, {12, 15}}};

struct PlanTotals {
    HitShare reached;
    HitShare covered;  // first sets within their interval of 80 %
    int unloadable = 0;
    int jumps = 0;
};

PlanTotals followed(Experience experience, const QString& rule, bool everyWeek)
{
    PlanTotals totals;
    for (unsigned i = 0; i < 6; ++i) {
        FollowCase what{.experience = experience, .rule = rule, .everyWeek = everyWeek};
        what.band = kFollowedBands[i % 3];
        what.equipment = static_cast<Equipment>(i / 2);
        what.experienceKnown = i % 2 == 0;
        what.seed = 9'000 + i + 100 * static_cast<unsigned>(experience);
        const Followed one = followPlan(what);
        for (const FollowedSet& set : one.sets) {
            totals.reached.add(set);
            if (set.number > 1) continue;
            ++totals.covered.sets;
            const bool within = set.reps >= set.within80.low - 0.5 && set.reps <= set.within80.high + 0.5;
            totals.covered.reached += within ? 1 : 0;
        }
        totals.unloadable += one.unloadable;
        totals.jumps += one.jumps;
    }
    return totals;
}

class FollowedPlans : public testing::TestWithParam<Experience> {};

TEST_P(FollowedPlans, TargetsAreReachedAboutThreeTimesInFourByEveryRule)
{
    for (const ProgressionRule* rule : progressionRules()) {
        const PlanTotals totals = followed(GetParam(), rule->id(), true);
        EXPECT_GT(totals.reached.sets, 500);
        EXPECT_GE(totals.reached.share(), 0.65) << rule->id().toStdString();
        EXPECT_LE(totals.reached.share(), 0.85) << rule->id().toStdString();
        EXPECT_GE(totals.covered.share(), 0.70) << rule->id().toStdString();
        EXPECT_EQ(totals.unloadable, 0);
        EXPECT_EQ(totals.jumps, 0);
    }
}

TEST_P(FollowedPlans, AWholeBlockWrittenAtOnceKeepsItsWordToo)
{
    const PlanTotals totals = followed(GetParam(), QStringLiteral("band_then_load"), false);
    EXPECT_GT(totals.reached.sets, 400);
    EXPECT_GE(totals.reached.share(), 0.65);
    EXPECT_LE(totals.reached.share(), 0.85);
    EXPECT_EQ(totals.unloadable, 0);
    EXPECT_EQ(totals.jumps, 0);
}

INSTANTIATE_TEST_SUITE_P(ByExperience, FollowedPlans,
                         testing::Values(Experience::Novice, Experience::Intermediate, Experience::Advanced));

TEST(FollowedPlansOfANovice, TheLoadRises)
{
    double rise = 0;
    for (unsigned seed = 1; seed <= 6; ++seed) {
        const Followed one = followPlan({.experience = Experience::Novice, .seed = seed});
        rise += one.lastKg / one.firstKg - 1;
    }
    EXPECT_GT(rise / 6, 0.1);
}

}  // namespace
}  // namespace steelyard
