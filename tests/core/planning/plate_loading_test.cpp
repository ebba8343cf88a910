#include "core/planning/plate_loading.h"

#include <gtest/gtest.h>

#include <random>

namespace steelyard {
namespace {

PlatePairs kg(std::string_view amount, int pairs)
{
    return {*Load::parse(amount, MassUnit::kg), pairs};
}

std::vector<std::string> written(const std::vector<Load>& plates)
{
    std::vector<std::string> texts;
    for (const Load& plate : plates) texts.push_back(plate.toString().toStdString());
    return texts;
}

TEST(PlateLoading, LoadsTheCompetitionSetAsTheRulesPrintIt)
{
    // Bar 20 kg and collars of 2.5 kg each (IWF TCRR 2020): 38.75 a side.
    const std::vector plates{kg("25", 4), kg("20", 1), kg("15", 1), kg("10", 1), kg("5", 1), kg("2.5", 1), kg("1.25", 1)};
    const auto found = loadPlates(massFromGrams(102'500), massFromGrams(20'000), massFromGrams(5'000), plates);
    EXPECT_TRUE(found.exact());
    EXPECT_EQ(written(found.perSide), (std::vector<std::string>{"25 kg", "10 kg", "2.5 kg", "1.25 kg"}));
}

TEST(PlateLoading, FindsWhatGreedyPickingMisses)
{
    const std::vector plates{kg("20", 1), kg("15", 2)};
    const auto found = loadPlates(massFromGrams(80'000), massFromGrams(20'000), std::nullopt, plates);
    EXPECT_TRUE(found.exact());
    EXPECT_EQ(written(found.perSide), (std::vector<std::string>{"15 kg", "15 kg"}));
}

TEST(PlateLoading, SaysWhenTheBarIsHeavierThanTheTarget)
{
    const auto found = loadPlates(massFromGrams(15'000), massFromGrams(20'000), std::nullopt, std::vector{kg("5", 1)});
    EXPECT_TRUE(found.underEmptyBar());
    EXPECT_EQ(found.total, massFromGrams(20'000));
    EXPECT_EQ(found.above, massFromGrams(20'000));
    EXPECT_TRUE(found.perSide.empty());
}

TEST(PlateLoading, MixesPoundAndKilogramPlatesWithoutRounding)
{
    const std::vector plates{kg("20", 1), PlatePairs{Load::make(Decimal(45), MassUnit::lb).value(), 1}};
    const Mass target = massFromGrams(60'000) + Mass::fromSteps(90 * kStepsPerPound);
    const auto found = loadPlates(target, massFromGrams(20'000), std::nullopt, plates);
    EXPECT_TRUE(found.exact());
    EXPECT_EQ(written(found.perSide), (std::vector<std::string>{"45 lb", "20 kg"}));
}

// Every way to hang the plates, one side.
void everySum(const std::vector<PlatePairs>& plates, std::size_t i, std::int64_t sum, int count,
              std::vector<std::pair<std::int64_t, int>>& sums)
{
    if (i == plates.size()) {
        sums.emplace_back(sum, count);
        return;
    }
    for (int n = 0; n <= plates[i].pairs; ++n)
        everySum(plates, i + 1, sum + n * plates[i].plate.mass().steps(), count + n, sums);
}

TEST(PlateLoading, AgreesWithTryingEverythingOnRandomInventories)
{
    std::mt19937 random(20260111);
    for (int round = 0; round < 300; ++round) {
        std::vector<PlatePairs> plates;
        for (int i = 0; i < 4; ++i)
            plates.push_back({*Load::make(Decimal(1 + static_cast<int>(random() % 25)),
                                          random() % 3 == 0 ? MassUnit::lb : MassUnit::kg),
                              1 + static_cast<int>(random() % 3)});
        const Mass bar = massFromGrams(20'000);
        const Mass target = massFromGrams(20'000 + static_cast<std::int64_t>(random() % 200'000));
        std::vector<std::pair<std::int64_t, int>> sums;
        everySum(plates, 0, 0, 0, sums);
        std::int64_t bestError = INT64_MAX;
        int fewest = 0;
        for (const auto& [sum, count] : sums) {
            const std::int64_t error = std::abs((bar - target).steps() + 2 * sum);
            if (error < bestError || (error == bestError && count < fewest)) {
                bestError = error;
                fewest = count;
            }
        }
        const auto found = loadPlates(target, bar, std::nullopt, plates);
        ASSERT_EQ(std::abs(found.error.steps()), bestError) << round;
        ASSERT_EQ(static_cast<int>(found.perSide.size()), fewest) << round;
        Mass total = bar;
        for (const Load& plate : found.perSide) total = total + 2 * plate.mass();
        ASSERT_EQ(total, found.total) << round;
    }
}

}  // namespace
}  // namespace steelyard
