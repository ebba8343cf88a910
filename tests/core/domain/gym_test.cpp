#include "core/domain/gym.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

Load loadOf(QStringView number, MassUnit unit)
{
    return Load::parse(number, unit).value();
}

Gym poundGym()
{
    Gym gym;
    gym.bars = {{QStringLiteral("short bar"), Implement::StraightBar, loadOf(u"35", MassUnit::lb)},
                {QStringLiteral("bar"), Implement::StraightBar, loadOf(u"45", MassUnit::lb)},
                {QStringLiteral("sled"), Implement::PlateMachine, loadOf(u"100", MassUnit::lb)}};
    return gym;
}

Variant variantOn(Implement implement, std::optional<Load> bar)
{
    Variant variant{.exercise = Id<Exercise>(1)};
    variant.implement = implement;
    variant.barMass = bar;
    return variant;
}

TEST(BarFor, IsTheGymsOwnBarNearestToTheUsualOne)
{
    const Gym gym = poundGym();
    EXPECT_EQ(barFor(&gym, variantOn(Implement::StraightBar, loadOf(u"20", MassUnit::kg))),
              loadOf(u"45", MassUnit::lb));
    EXPECT_EQ(barFor(&gym, variantOn(Implement::StraightBar, loadOf(u"15", MassUnit::kg))),
              loadOf(u"35", MassUnit::lb));
    EXPECT_EQ(barFor(&gym, variantOn(Implement::StraightBar, std::nullopt)), loadOf(u"35", MassUnit::lb));
}

TEST(BarFor, LeavesAMachineItsOwnLeverUnlessTheGymHasThatOne)
{
    const Gym gym = poundGym();
    EXPECT_EQ(barFor(&gym, variantOn(Implement::PlateMachine, loadOf(u"45", MassUnit::kg))),
              loadOf(u"100", MassUnit::lb));
    EXPECT_EQ(barFor(&gym, variantOn(Implement::PlateMachine, loadOf(u"5", MassUnit::kg))), loadOf(u"5", MassUnit::kg));
}

TEST(BarFor, IsTheVariantsWhereTheGymListsNone)
{
    const Gym gym = poundGym();
    const Load angled = loadOf(u"10", MassUnit::kg);
    EXPECT_EQ(barFor(&gym, variantOn(Implement::AngledBar, angled)), angled);
    EXPECT_EQ(barFor(nullptr, variantOn(Implement::StraightBar, angled)), angled);
    EXPECT_EQ(barFor(&gym, variantOn(Implement::AngledBar, std::nullopt)), std::nullopt);
}

}  // namespace
}  // namespace steelyard
