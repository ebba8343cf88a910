#include "core/trials/trial_power.h"

#include "core/trials/trial_power_table.h"

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

// Where a value lies in an ascending list: between `low` and `high`, `share` of the way.
struct Between {
    std::size_t low = 0;
    std::size_t high = 0;
    double share = 0;
};

template <class T>
Between between(const std::vector<T>& list, double value)
{
    const auto above = std::ranges::find_if(list, [&](T one) { return static_cast<double>(one) >= value; });
    if (above == list.end()) return {list.size() - 1, list.size() - 1, 0};
    const auto high = static_cast<std::size_t>(above - list.begin());
    if (high == 0 || static_cast<double>(*above) == value) return {high, high, 0};
    const auto low = static_cast<double>(list[high - 1]);
    return {high - 1, high, (value - low) / (static_cast<double>(*above) - low)};
}

// Rows stand in the order arms, blocks, differences.
const PowerCell& cellAt(std::size_t arms, std::size_t blocksPlace, std::size_t differencePlace)
{
    static const std::size_t differences = powerDifferences().size();
    static const std::size_t blocks = powerBlocks().size();
    const std::size_t armsPlace = std::clamp<std::size_t>(arms, 2, 4) - 2;
    return kPowerTable[(armsPlace * blocks + blocksPlace) * differences + differencePlace];
}

template <class Value>
double interpolated(std::size_t arms, const Between& blocks, const Between& difference, const Value& value)
{
    const auto along = [&](std::size_t blocksPlace) {
        const double low = value(cellAt(arms, blocksPlace, difference.low));
        return low + difference.share * (value(cellAt(arms, blocksPlace, difference.high)) - low);
    };
    const double low = along(blocks.low);
    return low + blocks.share * (along(blocks.high) - low);
}

}  // namespace

std::vector<double> powerDifferences()
{
    std::set<double> all;
    for (const PowerCell& cell : kPowerTable) all.insert(cell.differenceSds);
    return {all.begin(), all.end()};
}

std::vector<int> powerBlocks()
{
    std::set<int> all;
    for (const PowerCell& cell : kPowerTable) all.insert(cell.blocks);
    return {all.begin(), all.end()};
}

TrialPower trialPower(const TrialDesign& design, double differenceSds)
{
    TrialPower power;
    // Before the first look nothing is ever said.
    const std::vector<int> allBlocks = powerBlocks();
    if (design.blocks < allBlocks.front()) {
        power.meanSessions = static_cast<double>(design.arms) * design.blocks;
        if (design.arms == 2) power.randomisation = 0;
        return power;
    }
    const Between blocks = between(allBlocks, design.blocks);
    const Between difference = between(powerDifferences(), differenceSds);
    const auto of = [&](double PowerCell::*value) {
        return interpolated(design.arms, blocks, difference, [&](const PowerCell& cell) { return cell.*value; });
    };
    power.prefersRight = of(&PowerCell::right);
    power.prefersWrong = of(&PowerCell::wrong);
    power.meanSessions = of(&PowerCell::sessions);
    if (design.arms == 2) power.randomisation = of(&PowerCell::byLot);
    return power;
}

std::optional<int> blocksFor(std::size_t arms, double differenceSds, double chance)
{
    const std::vector<int> all = powerBlocks();
    for (int blocks = all.front(); blocks <= all.back(); ++blocks)
        if (trialPower({arms, blocks}, differenceSds).prefersRight >= chance) return blocks;
    return std::nullopt;
}

std::optional<double> smallestFound(const TrialDesign& design, double chance)
{
    const std::vector<double> all = powerDifferences();
    constexpr double kStep = 0.05;
    for (double difference = kStep; difference <= all.back() + kStep / 2; difference += kStep)
        if (trialPower(design, difference).prefersRight >= chance) return difference;
    return std::nullopt;
}

}  // namespace steelyard
