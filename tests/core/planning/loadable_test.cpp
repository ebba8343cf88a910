#include "core/planning/loadable.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

Load kilograms(std::string_view amount)
{
    return *Load::parse(amount, MassUnit::kg);
}

Gym clubGym()
{
    Gym gym;
    gym.bars.push_back({QStringLiteral("20 kg bar"), Implement::StraightBar, kilograms("20")});
    gym.plates = {{kilograms("20"), 2}, {kilograms("10"), 1}, {kilograms("5"), 1}, {kilograms("1.25"), 1}};
    gym.dumbbells.push_back({QStringLiteral("dumbbells"), kilograms("4"), kilograms("2"), kilograms("30")});
    gym.stacks.push_back({QStringLiteral("stack A"), kilograms("5"), kilograms("5"), kilograms("100")});
    gym.stacks.push_back({QStringLiteral("stack B"), kilograms("2"), kilograms("3"), kilograms("50")});
    return gym;
}

Variant loadedAs(Loading loading, Implement implement = Implement::StraightBar)
{
    Variant variant{.exercise = Id<Exercise>(1)};
    variant.loading = loading;
    variant.implement = implement;
    return variant;
}

TEST(Loadable, ABarTakesThePlatesOfTheGymOnBothSides)
{
    const Gym gym = clubGym();
    const auto choice = nearestLoadable(massFromGrams(52'500), loadedAs(Loading::BarTotal), &gym, MassUnit::kg);
    EXPECT_TRUE(choice.exact);
    EXPECT_EQ(choice.load, kilograms("52.5"));
    EXPECT_EQ(choice.plates, (std::vector{kilograms("10"), kilograms("5"), kilograms("1.25")}));
}

TEST(Loadable, CollarsCountOnABar)
{
    Gym gym = clubGym();
    gym.collarPair = kilograms("5");
    const auto choice = nearestLoadable(massFromGrams(45'000), loadedAs(Loading::BarTotal), &gym, MassUnit::kg);
    EXPECT_TRUE(choice.exact);
    EXPECT_EQ(choice.plates, std::vector{kilograms("10")});
}

TEST(Loadable, NamesTheNeighboursOfALoadThatCannotBeSet)
{
    const Gym gym = clubGym();
    const auto choice = nearestLoadable(massFromGrams(36'000), loadedAs(Loading::BarTotal), &gym, MassUnit::kg);
    EXPECT_FALSE(choice.exact);
    EXPECT_EQ(choice.below, kilograms("32.5"));
    EXPECT_EQ(choice.above, kilograms("40"));
    EXPECT_EQ(choice.load, kilograms("32.5"));
}

TEST(Loadable, ATargetUnderTheEmptyBarIsSaidToBeOne)
{
    const Gym gym = clubGym();
    const auto choice = nearestLoadable(massFromGrams(15'000), loadedAs(Loading::BarTotal), &gym, MassUnit::kg);
    EXPECT_TRUE(choice.underEmptyBar);
    EXPECT_EQ(choice.load, kilograms("20"));
}

TEST(Loadable, DumbbellsEndWhereTheRowEnds)
{
    const Gym gym = clubGym();
    const LoadFinder loads(&gym, MassUnit::kg);
    const Variant variant = loadedAs(Loading::PerHand);
    EXPECT_EQ(loads.next(kilograms("12"), variant, LoadChange::Harder), kilograms("14"));
    EXPECT_EQ(loads.next(kilograms("11"), variant, LoadChange::Easier), kilograms("10"));
    EXPECT_FALSE(loads.next(kilograms("30"), variant, LoadChange::Harder));
    EXPECT_FALSE(loads.next(kilograms("4"), variant, LoadChange::Easier));
}

TEST(Loadable, AStackIsChosenByTheStepOfTheVariant)
{
    const Gym gym = clubGym();
    Variant variant = loadedAs(Loading::Stack);
    variant.step = kilograms("3");
    EXPECT_EQ(loadablesBetween(massFromGrams(1'000), massFromGrams(9'000), variant, &gym, MassUnit::kg),
              (std::vector{kilograms("2"), kilograms("5"), kilograms("8")}));
}

TEST(Loadable, SmallPlatesOnAStackMakeTheStepsBetweenItsPins)
{
    Gym gym = clubGym();
    gym.stacks.resize(1);
    gym.stacks[0].addOns = {kilograms("1.25"), kilograms("2.5")};
    const LoadFinder loads(&gym, MassUnit::kg);
    const Variant variant = loadedAs(Loading::Stack, Implement::Cable);
    const auto choice = loads.nearest(massFromGrams(33'700), variant);
    EXPECT_EQ(choice.load, kilograms("33.75"));
    EXPECT_EQ(choice.pin, kilograms("30"));
    EXPECT_EQ(choice.plates, (std::vector{kilograms("2.5"), kilograms("1.25")}));
    EXPECT_EQ(loads.next(kilograms("30"), variant, LoadChange::Harder), kilograms("31.25"));
    EXPECT_EQ(loads.next(kilograms("5"), variant, LoadChange::Easier), std::nullopt);
    EXPECT_TRUE(loads.nearest(massFromGrams(35'000), variant).plates.empty()) << "a pin alone before a pin with plates";
}

TEST(Loadable, HarderAssistedWorkMeansLessHelp)
{
    Variant variant = loadedAs(Loading::Assisted);
    variant.step = kilograms("5");
    EXPECT_EQ(nextLoadable(kilograms("20"), variant, nullptr, MassUnit::kg, LoadChange::Harder), kilograms("15"));
    EXPECT_EQ(nextLoadable(kilograms("20"), variant, nullptr, MassUnit::kg, LoadChange::Easier), kilograms("25"));
}

TEST(Loadable, ABeltTakesSinglePlates)
{
    const Gym gym = clubGym();
    const auto choice = nearestLoadable(massFromGrams(7'500), loadedAs(Loading::Added), &gym, MassUnit::kg);
    EXPECT_TRUE(choice.exact);
    EXPECT_EQ(choice.plates, (std::vector{kilograms("5"), kilograms("1.25"), kilograms("1.25")}));
}

Load pounds(std::string_view amount)
{
    return *Load::parse(amount, MassUnit::lb);
}

Gym gymOfBothUnits()
{
    Gym gym = clubGym();
    gym.plates = {
        {kilograms("20"), 1}, {kilograms("5"), 1}, {kilograms("2.5"), 1}, {pounds("10"), 1}, {pounds("2.5"), 1}};
    gym.dumbbells = {{QStringLiteral("kilograms"), kilograms("4"), kilograms("2"), kilograms("12")},
                     {QStringLiteral("pounds"), pounds("5"), pounds("5"), pounds("40")}};
    return gym;
}

TEST(Loadable, PoundsDoNotHangBesideKilogramsWhereOneUnitWillDo)
{
    const Gym gym = gymOfBothUnits();
    const LoadFinder loads(&gym, MassUnit::kg);
    const Variant bar = loadedAs(Loading::BarTotal);
    EXPECT_EQ(loads.between(massFromGrams(20'000), massFromGrams(40'000), bar),
              (std::vector{kilograms("20"), kilograms("25"), kilograms("30"), kilograms("35")}));
    EXPECT_EQ(loads.nearest(massFromGrams(38'800), bar).load, kilograms("35"));
    EXPECT_EQ(loads.nearest(massFromGrams(38'800), bar).above, kilograms("60"));
    EXPECT_EQ(loads.next(kilograms("35"), bar, LoadChange::Harder), kilograms("60"));
    EXPECT_EQ(loads.next(pounds("15"), loadedAs(Loading::PerHand), LoadChange::Harder), kilograms("8"));
}

TEST(Loadable, BothUnitsHangTogetherWhereOneDoesNotReach)
{
    const Gym gym = gymOfBothUnits();
    const LoadFinder loads(&gym, MassUnit::kg);
    const Variant bar = loadedAs(Loading::BarTotal);
    // 20 kg bar, 27.5 kg a side: 75 kg is all that the kilograms make. 22.5 kg with 10 and 2.5 lb a side make 76.34 kg.
    EXPECT_EQ(loads.next(kilograms("75"), bar, LoadChange::Harder), kilograms("76.34"));
    EXPECT_EQ(loads.nearest(massFromGrams(76'300), bar).plates,
              (std::vector{kilograms("20"), pounds("10"), kilograms("2.5"), pounds("2.5")}));
    EXPECT_EQ(loads.next(kilograms("12"), loadedAs(Loading::PerHand), LoadChange::Harder), pounds("30"));
}

TEST(Loadable, ALoadThatWasMadeOfBothUnitsIsFoundAgain)
{
    const Gym gym = gymOfBothUnits();
    const auto choice = nearestLoadable(kilograms("39.07").mass(), loadedAs(Loading::BarTotal), &gym, MassUnit::kg);
    EXPECT_TRUE(choice.exact);
    EXPECT_EQ(choice.plates, (std::vector{kilograms("5"), pounds("10")}));
}

TEST(Loadable, PlatesThatAreAllOfTheOtherUnitGiveLoadsInTheirs)
{
    Gym gym;
    gym.bars.push_back({QStringLiteral("45 lb bar"), Implement::StraightBar, pounds("45")});
    gym.plates = {{pounds("45"), 2}, {pounds("10"), 1}};
    const auto choice = nearestLoadable(massFromGrams(60'000), loadedAs(Loading::BarTotal), &gym, MassUnit::kg);
    EXPECT_EQ(choice.load, pounds("135"));
}

}  // namespace
}  // namespace steelyard
