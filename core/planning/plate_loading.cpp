#include "core/planning/plate_loading.h"

#include <algorithm>

namespace steelyard {
namespace {

// Nobody loads more than that on one side of a bar; it bounds the lists whatever inventory is typed.
constexpr std::int64_t kMostStepsPerSide = 1000 * kStepsPerKilogram;

bool heavierPlate(const Load& a, const Load& b)
{
    return a.mass() > b.mass();
}

std::int64_t magnitude(Mass mass)
{
    return mass.steps() < 0 ? -mass.steps() : mass.steps();
}

}  // namespace

PlateSearch::PlateSearch(std::span<const PlatePairs> inventory, Hang hang)
    : m_kilogram(makeRack(inventory, MassUnit::kg, hang == Hang::Singly ? 2 : 1))
    , m_pound(makeRack(inventory, MassUnit::lb, hang == Hang::Singly ? 2 : 1))
    , m_sides(hang == Hang::Singly ? 1 : 2)
{
}

PlateSearch::Rack PlateSearch::makeRack(std::span<const PlatePairs> inventory, MassUnit unit, int perPair)
{
    Rack rack;
    for (const PlatePairs& entry : inventory) {
        if (entry.plate.unit() != unit || entry.pairs < 1 || entry.plate.mass() <= Mass()) continue;
        const auto same = std::find_if(rack.plates.begin(), rack.plates.end(), [&](const PlatePairs& known) {
            return known.plate.mass() == entry.plate.mass();
        });
        if (same == rack.plates.end())
            rack.plates.push_back({entry.plate, entry.pairs * perPair});
        else
            same->pairs += entry.pairs * perPair;
    }
    std::sort(rack.plates.begin(), rack.plates.end(),
              [](const PlatePairs& a, const PlatePairs& b) { return heavierPlate(a.plate, b.plate); });
    rack.layers.assign(rack.plates.size() + 1, {});
    rack.layers.back().push_back({0, 0});
    for (std::size_t i = rack.plates.size(); i-- > 0;) {
        const std::int64_t plate = rack.plates[i].plate.mass().steps();
        std::vector<Sum>& sums = rack.layers[i];
        for (const Sum& lighter : rack.layers[i + 1])
            for (int count = 0; count <= rack.plates[i].pairs; ++count) {
                const std::int64_t steps = lighter.steps + count * plate;
                if (steps > kMostStepsPerSide) break;
                sums.push_back({steps, lighter.plates + count});
            }
        std::sort(sums.begin(), sums.end(), [](const Sum& a, const Sum& b) {
            return a.steps != b.steps ? a.steps < b.steps : a.plates < b.plates;
        });
        sums.erase(std::unique(sums.begin(), sums.end(),
                               [](const Sum& a, const Sum& b) { return a.steps == b.steps; }),
                   sums.end());
    }
    return rack;
}

void PlateSearch::addPlates(const Rack& rack, std::int64_t steps, std::vector<Load>& plates)
{
    const auto fewest = [](const std::vector<Sum>& sums, std::int64_t wanted) -> std::optional<int> {
        const auto at = std::lower_bound(sums.begin(), sums.end(), wanted,
                                         [](const Sum& sum, std::int64_t value) { return sum.steps < value; });
        if (at == sums.end() || at->steps != wanted) return std::nullopt;
        return at->plates;
    };
    for (std::size_t i = 0; i < rack.plates.size(); ++i) {
        const auto best = fewest(rack.layers[i], steps);
        const std::int64_t plate = rack.plates[i].plate.mass().steps();
        // As many of the heaviest as still lead to the fewest plates in all.
        for (int count = rack.plates[i].pairs; count >= 0; --count) {
            const auto rest = fewest(rack.layers[i + 1], steps - count * plate);
            if (!rest || *rest + count != *best) continue;
            plates.insert(plates.end(), static_cast<std::size_t>(count), rack.plates[i].plate);
            steps -= count * plate;
            break;
        }
    }
}

std::optional<PlateSearch::Split> PlateSearch::splitUpTo(std::int64_t side) const
{
    const auto& pounds = m_pound.layers.front();
    std::size_t reach = pounds.size();  // pounds[0, reach) still fit
    std::optional<Split> best;
    for (const Sum& kilograms : m_kilogram.layers.front()) {
        while (reach > 0 && kilograms.steps + pounds[reach - 1].steps > side) --reach;
        if (reach == 0) break;
        const std::int64_t sum = kilograms.steps + pounds[reach - 1].steps;
        if (!best || sum > best->kilogramSteps + best->poundSteps)
            best = Split{kilograms.steps, pounds[reach - 1].steps};
    }
    return best;
}

std::optional<PlateSearch::Split> PlateSearch::splitFrom(std::int64_t side) const
{
    const auto& pounds = m_pound.layers.front();
    std::size_t first = pounds.size();  // the least that reaches the side; falls as the kilograms rise
    std::optional<Split> best;
    for (const Sum& kilograms : m_kilogram.layers.front()) {
        while (first > 0 && kilograms.steps + pounds[first - 1].steps >= side) --first;
        if (first == pounds.size()) continue;
        const std::int64_t sum = kilograms.steps + pounds[first].steps;
        if (!best || sum < best->kilogramSteps + best->poundSteps)
            best = Split{kilograms.steps, pounds[first].steps};
    }
    return best;
}

// A sum of kilogram plates equals a sum of pound plates only above 45 tonnes (both have at most three decimals), so
// a total splits in one way and the two racks can be solved apart.
std::vector<Load> PlateSearch::platesOf(Split split) const
{
    std::vector<Load> plates;
    addPlates(m_kilogram, split.kilogramSteps, plates);
    addPlates(m_pound, split.poundSteps, plates);
    std::stable_sort(plates.begin(), plates.end(), heavierPlate);
    return plates;
}

std::optional<Mass> PlateSearch::heaviestUpTo(Mass limit, Mass emptyBar) const
{
    if (limit < emptyBar) return std::nullopt;
    const auto split = splitUpTo((limit - emptyBar).steps() / m_sides);  // rounds down: never over the limit
    if (!split) return std::nullopt;
    return emptyBar + Mass::fromSteps(m_sides * (split->kilogramSteps + split->poundSteps));
}

std::optional<Mass> PlateSearch::lightestFrom(Mass limit, Mass emptyBar) const
{
    if (limit <= emptyBar) return emptyBar;
    const auto split = splitFrom(((limit - emptyBar).steps() + m_sides - 1) / m_sides);  // rounds up
    if (!split) return std::nullopt;
    return emptyBar + Mass::fromSteps(m_sides * (split->kilogramSteps + split->poundSteps));
}

std::vector<Load> PlateSearch::platesFor(Mass total, Mass emptyBar) const
{
    const auto split = total < emptyBar ? std::nullopt : splitUpTo((total - emptyBar).steps() / m_sides);
    if (!split || emptyBar + Mass::fromSteps(m_sides * (split->kilogramSteps + split->poundSteps)) != total) return {};
    return platesOf(*split);
}

PlateLoading PlateSearch::nearest(Mass target, Mass bar, Mass collarPair) const
{
    const Mass empty = bar + collarPair;
    const auto below = heaviestUpTo(target, empty);
    const auto above = lightestFrom(target, empty);
    PlateLoading loading;
    if (!below) {
        loading.total = empty;  // the target is under the empty bar
    } else if (!above || magnitude(target - *below) < magnitude(*above - target)) {
        loading.total = *below;
    } else if (magnitude(*above - target) < magnitude(target - *below)) {
        loading.total = *above;
    } else {
        loading.total = platesFor(*above, empty).size() < platesFor(*below, empty).size() ? *above : *below;
    }
    loading.perSide = platesFor(loading.total, empty);
    loading.error = loading.total - target;
    if (!loading.exact()) {
        loading.below = below;
        loading.above = above;
    }
    return loading;
}

PlateLoading loadPlates(Mass target, Mass bar, std::optional<Mass> collarPair, std::span<const PlatePairs> inventory)
{
    return PlateSearch(inventory).nearest(target, bar, collarPair.value_or(Mass()));
}

}  // namespace steelyard
