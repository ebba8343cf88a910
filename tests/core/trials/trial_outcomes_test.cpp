#include "core/trials/trial_outcomes.h"

#include <gtest/gtest.h>

#include <set>

namespace steelyard {
namespace {

Exposure ratedExposure()
{
    Exposure exposure;
    exposure.rating.tension = 7;
    exposure.rating.gaveOut = QStringLiteral("forearm_flexors");
    exposure.rating.discomfort[static_cast<std::size_t>(Joint::Wrist)] = 2;
    exposure.rating.discomfort[static_cast<std::size_t>(Joint::Elbow)] = 0;
    exposure.rating.nextSoreness = 4;
    return exposure;
}

TEST(TrialOutcomes, DescribeThemselvesAndHaveKeysOfTheirOwn)
{
    std::set<QString> keys;
    for (const OutcomeKind& kind : outcomeKinds()) {
        EXPECT_TRUE(keys.insert(kind.key).second);
        EXPECT_FALSE(kind.title().isEmpty());
        EXPECT_FALSE(kind.question().isEmpty());
        EXPECT_FALSE(kind.why().isEmpty());
        EXPECT_FALSE(kind.unit().isEmpty());
        EXPECT_GT(kind.usualSpread, 0);
        EXPECT_EQ(findOutcome(kind.key), &kind);
    }
    EXPECT_EQ(keys.size(), 8u);
    EXPECT_EQ(findOutcome(u"of_a_newer_program"), nullptr);
    EXPECT_EQ(outcomeTitle(u"of_a_newer_program"), u"of_a_newer_program");
}

TEST(TrialOutcomes, TakeTheirValuesFromASession)
{
    const Exposure exposure = ratedExposure();
    const OutcomeSource source{exposure, {}, false};
    EXPECT_EQ(findOutcome(u"tension")->value(source), 7);
    EXPECT_EQ(findOutcome(u"target_first")->value(source), 0);
    EXPECT_EQ(findOutcome(u"discomfort")->value(source), 2);
    EXPECT_EQ(findOutcome(u"next_soreness")->value(source), 4);
    EXPECT_EQ(findOutcome(u"pump")->value(source), std::nullopt);
    EXPECT_EQ(findOutcome(u"performance")->value(source), std::nullopt);
}

TEST(TrialOutcomes, LeaveOutSorenessOfAMuscleThatWasTrainedInBetween)
{
    const Exposure exposure = ratedExposure();
    EXPECT_EQ(findOutcome(u"next_soreness")->value({exposure, {}, true}), std::nullopt);
    EXPECT_EQ(findOutcome(u"tension")->value({exposure, {}, true}), 7);
}

TEST(TrialOutcomes, TellNobodyAskedFromNothingFelt)
{
    Exposure exposure;
    EXPECT_EQ(findOutcome(u"discomfort")->value({exposure, {}, false}), std::nullopt);
    exposure.rating.discomfort[0] = 0;
    EXPECT_EQ(findOutcome(u"discomfort")->value({exposure, {}, false}), 0);
}

TEST(TrialOutcomes, StandOnOneScaleWhereMoreIsBetter)
{
    EXPECT_EQ(findOutcome(u"tension")->outOfTen(7), 7);
    EXPECT_EQ(findOutcome(u"target_first")->outOfTen(1), 10);
    EXPECT_EQ(findOutcome(u"discomfort")->outOfTen(3), 7);
    EXPECT_EQ(findOutcome(u"performance")->outOfTen(1), std::nullopt);
}

TEST(TrialOutcomes, WeighOneTogetherByDefaultAndNothingOfTheNextDayOrPerformance)
{
    double sum = 0;
    for (const TrialOutcome& outcome : defaultOutcomes()) {
        sum += outcome.weight;
        if (outcome.key == u"next_soreness" || outcome.key == u"next_weakness" || outcome.key == u"performance") {
            EXPECT_EQ(outcome.weight, 0);
        }
    }
    EXPECT_NEAR(sum, 1, 1e-12);
}

}  // namespace
}  // namespace steelyard
