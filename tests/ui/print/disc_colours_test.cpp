#include "ui/print/disc_colours.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

// IWF Technical and Competition Rules & Regulations (2020), chapter on equipment, "Discs"; the list is also that of the Games' own
// description of the equipment (nbcolympics.com, "Weightlifting 101: Equipment").
TEST(DiscColours, AreThoseOfTheInternationalWeightliftingRules)
{
    using enum DiscColour;
    const std::pair<int, DiscColour> rules[] = {{25'000, Red},  {20'000, Blue}, {15'000, Yellow}, {10'000, Green},
                                                {5'000, White}, {2'500, Red},   {2'000, Blue},    {1'500, Yellow},
                                                {1'000, Green}, {500, White}};
    for (const auto& [grams, colour] : rules) EXPECT_EQ(discColour(massFromGrams(grams)), colour) << grams;
}

TEST(DiscColours, ADiscThatTheRulesDontHaveHasNone)
{
    for (const int grams : {1'250, 250, 750, 30'000, 20'500}) EXPECT_FALSE(discColour(massFromGrams(grams))) << grams;
    EXPECT_FALSE(discColour(45 * Mass::fromSteps(kStepsPerPound)));
}

TEST(DiscColours, LookLikeTheirNames)
{
    const auto hue = [](DiscColour colour) { return inkOf(colour).hslHue(); };
    EXPECT_TRUE(hue(DiscColour::Red) < 20 || hue(DiscColour::Red) > 340);
    EXPECT_NEAR(hue(DiscColour::Yellow), 50, 12);
    EXPECT_NEAR(hue(DiscColour::Green), 147, 30);
    EXPECT_NEAR(hue(DiscColour::Blue), 217, 25);
    EXPECT_EQ(inkOf(DiscColour::White), QColor(Qt::white));
}

}  // namespace
}  // namespace steelyard
