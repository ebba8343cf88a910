#include "core/planning/warm_up.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

std::vector<std::string> warmUpTo(std::string_view working, Loading loading)
{
    const LoadFinder loads(nullptr, MassUnit::kg);
    Variant variant{.exercise = Id<Exercise>(1)};
    variant.loading = loading;
    std::vector<std::string> texts;
    for (const WarmUpSet& set : warmUpSets(*Load::parse(working, MassUnit::kg), variant, loads))
        texts.push_back(set.load.toString().toStdString() + " x " + std::to_string(set.reps));
    return texts;
}

TEST(WarmUp, RisesInThreeStepsToAHeavyLoad)
{
    EXPECT_EQ(warmUpTo("100", Loading::BarTotal), (std::vector<std::string>{"50 kg x 8", "70 kg x 4", "85 kg x 2"}));
}

TEST(WarmUp, ALightLoadTakesFewerStepsAndAVeryLightOneNone)
{
    EXPECT_EQ(warmUpTo("50", Loading::BarTotal), (std::vector<std::string>{"25 kg x 8", "35 kg x 4"}));
    EXPECT_EQ(warmUpTo("20", Loading::BarTotal), (std::vector<std::string>{"10 kg x 8"}));
    EXPECT_TRUE(warmUpTo("19.5", Loading::BarTotal).empty());
}

TEST(WarmUp, TwoDumbbellsCountAsBothTogether)
{
    EXPECT_EQ(warmUpTo("10", Loading::PerHand), (std::vector<std::string>{"5 kg x 8"}));
    EXPECT_TRUE(warmUpTo("9", Loading::PerHand).empty());
}

TEST(WarmUp, AssistedWorkGetsNone)
{
    EXPECT_TRUE(warmUpTo("60", Loading::Assisted).empty());
}

TEST(WarmUp, StepsThatFallOnOneLoadAreGivenOnce)
{
    Gym gym;
    gym.bars.push_back({QStringLiteral("bar"), Implement::StraightBar, *Load::parse(u"60", MassUnit::kg)});
    gym.plates.push_back({*Load::parse(u"20", MassUnit::kg), 1});
    const LoadFinder loads(&gym, MassUnit::kg);
    Variant variant{.exercise = Id<Exercise>(1)};
    variant.implement = Implement::StraightBar;
    const auto sets = warmUpSets(*Load::parse(u"100", MassUnit::kg), variant, loads);
    ASSERT_EQ(sets.size(), 1U);  // 50, 70 and 85 % all fall on the empty bar or the working load
    EXPECT_EQ(sets[0].load.toString(), QStringLiteral("60 kg"));
    EXPECT_TRUE(sets[0].plates.empty());
}

}  // namespace
}  // namespace steelyard
