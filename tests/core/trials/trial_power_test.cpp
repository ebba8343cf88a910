#include "core/trials/trial_power.h"

#include "tests/support/r_script.h"
#include "tests/support/simulated_trials.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::simulateTrials;

TEST(TrialPower, PromisesWhatFreshTrialsKeep)
{
    for (const auto& [arms, blocks, difference] :
         {std::tuple{2u, 8, 1.0}, std::tuple{2u, 12, 1.0}, std::tuple{2u, 6, 1.5}, std::tuple{3u, 8, 1.5}}) {
        const TrialPower promised = trialPower({arms, blocks}, difference);
        const auto kept = simulateTrials({.arms = arms, .blocks = blocks, .differenceSds = difference}, 800, 4711);
        EXPECT_NEAR(promised.prefersRight, kept.right, 0.05) << arms << ' ' << blocks << ' ' << difference;
        EXPECT_NEAR(promised.prefersWrong, kept.wrong, 0.02);
        EXPECT_NEAR(promised.meanSessions, kept.meanSessions, 1.0);
    }
}

TEST(TrialPower, GrowsWithTheDifferenceAndWithTheBlocks)
{
    for (const int blocks : powerBlocks()) {
        double before = -1;
        for (const double difference : powerDifferences()) {
            const double now = trialPower({2, blocks}, difference).prefersRight;
            EXPECT_GE(now, before - 0.02) << blocks << ' ' << difference;
            before = now;
        }
    }
    EXPECT_GT(trialPower({2, 24}, 1).prefersRight, trialPower({2, 6}, 1).prefersRight + 0.2);
}

TEST(TrialPower, LiesBetweenItsNeighboursAndIsHeldAtTheEdges)
{
    const double low = trialPower({2, 12}, 1).prefersRight;
    const double high = trialPower({2, 16}, 1).prefersRight;
    EXPECT_NEAR(trialPower({2, 14}, 1).prefersRight, (low + high) / 2, 1e-12);
    EXPECT_EQ(trialPower({2, 99}, 99).prefersRight, trialPower({2, 24}, 2).prefersRight);
    EXPECT_EQ(trialPower({2, 3}, 2).prefersRight, 0);
}

TEST(TrialPower, SaysHowManyBlocksADifferenceNeeds)
{
    const auto large = blocksFor(2, 1.5);
    const auto small = blocksFor(2, 1.0);
    ASSERT_TRUE(large && small);
    EXPECT_LT(*large, *small);
    EXPECT_GE(trialPower({2, *small}, 1.0).prefersRight, 0.8);
    EXPECT_FALSE(blocksFor(2, 0.1));
    const auto least = smallestFound({2, 12});
    ASSERT_TRUE(least);
    EXPECT_NEAR(trialPower({2, 12}, *least).prefersRight, 0.8, 0.06);
}

// Five blocks of two can't reach 0.05: the least is 2 / 2^5.
TEST(TrialPower, OfTheTestByLotIsNoneWhereItCannotBeReached)
{
    EXPECT_EQ(trialPower({2, 4}, 2).randomisation, 0);
    EXPECT_EQ(trialPower({2, 5}, 2).randomisation, 0);
    EXPECT_GT(trialPower({2, 12}, 2).randomisation.value(), 0.9);
    EXPECT_FALSE(trialPower({3, 8}, 1).randomisation);
}

// R's power.t.test of a paired t: the test by lot asks nearly the same. Differences of a pair have twice the sessions'
// variance, less what neighbours share, and whole ratings add a twelfth of a point squared.
TEST(TrialPower, OfTheTestByLotIsAboutThatOfRsPairedT)
{
    const auto answer = testing_support::runR(
        "d <- scan(file('stdin'), quiet = TRUE); cat(sapply(d, function(x) power.t.test(n = 12, delta = x, "
        "sd = sqrt(2 * (1 - .3) + 2 / 12 / 1.44), type = 'paired')$power))",
        {0.5, 1.0, 1.5});
    ASSERT_EQ(answer.size(), 3u);
    EXPECT_NEAR(trialPower({2, 12}, 0.5).randomisation.value(), answer[0], 0.1);
    EXPECT_NEAR(trialPower({2, 12}, 1.0).randomisation.value(), answer[1], 0.1);
    EXPECT_NEAR(trialPower({2, 12}, 1.5).randomisation.value(), answer[2], 0.1);
}

}  // namespace
}  // namespace steelyard
