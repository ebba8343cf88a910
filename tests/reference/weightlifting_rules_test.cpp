// Bars, discs and steps of the international weightlifting rules (IWF Technical and Competition Rules 2020): men's bar 20 kg,
// women's 15 kg, collars 2.5 kg each; discs 25, 20, 15, 10, 5, 2.5, 2, 1.5, 1 and 0.5 kg; attempts in whole kilograms.
#include "core/exchange/starter_library.h"
#include "core/planning/plate_loading.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

constexpr std::array kDiscGrams{25'000, 20'000, 15'000, 10'000, 5'000, 2'500, 2'000, 1'500, 1'000, 500};

std::vector<PlatePairs> competitionDiscs()
{
    std::vector<PlatePairs> discs;
    for (const int grams : kDiscGrams)
        discs.push_back(
            {Load::make(Decimal::fromScaled(grams / 100, 1), MassUnit::kg).value(), grams == 25'000 ? 5 : 1});
    return discs;
}

TEST(WeightliftingRules, EveryAttemptOfAWholeKilogramCanBeLoaded)
{
    const auto discs = competitionDiscs();
    const PlateSearch search(discs);
    for (const auto& [bar, heaviest] : {std::pair(20, 250), {15, 190}})
        for (int attempt = bar + 5; attempt <= heaviest; ++attempt) {
            const auto found =
                search.nearest(massFromGrams(attempt * 1000), massFromGrams(bar * 1000), massFromGrams(5'000));
            EXPECT_TRUE(found.exact()) << attempt << " kg on the " << bar << " kg bar";
            std::int64_t total = massFromGrams(bar * 1000 + 5'000).steps();
            for (const Load& disc : found.perSide) total += 2 * disc.mass().steps();
            EXPECT_EQ(total, massFromGrams(attempt * 1000).steps());
        }
}

TEST(WeightliftingRules, HalfAKilogramOffIsSaidNotToBeLoadable)
{
    const auto discs = competitionDiscs();
    const auto found = PlateSearch(discs).nearest(massFromGrams(100'500), massFromGrams(20'000), massFromGrams(5'000));
    EXPECT_FALSE(found.exact());
}

TEST(WeightliftingRules, TheStarterClubsBarsAndDiscsAreThoseOfTheRules)
{
    const auto library = builtInStarterLibrary();
    ASSERT_TRUE(library);
    const auto club = std::ranges::find(library->gyms, QStringLiteral("Quayside Barbell Club"), &Gym::name);
    ASSERT_NE(club, library->gyms.end());
    for (const int bar : {20'000, 15'000})
        EXPECT_TRUE(std::ranges::any_of(club->bars, [&](const GymBar& each) {
            return each.implement == Implement::StraightBar && each.mass.mass() == massFromGrams(bar);
        })) << bar;
    // 1.25 kg is a disc of powerlifting halls (IPF), not of these rules.
    for (const PlatePairs& pair : club->plates)
        EXPECT_TRUE(pair.plate.mass() == massFromGrams(1'250)
                    || std::ranges::any_of(kDiscGrams, [&](int g) { return pair.plate.mass() == massFromGrams(g); }))
            << pair.plate.toString().toStdString();
}

}  // namespace
}  // namespace steelyard
