#include "core/planning/loadable.h"

#include <algorithm>

namespace steelyard {
namespace {

// Common practice, no source: what a gym is likely to have when nobody said. Pounds are the usual US jumps.
constexpr int kDefaultStepGrams = 2500;
constexpr int kDefaultStepPerHandGrams = 1000;
constexpr int kDefaultStepPounds = 5;
constexpr Mass kHeaviestLoad = massFromGrams(1'000'000);

std::span<const PlatePairs> platesIn(const Gym* gym)
{
    return gym ? std::span<const PlatePairs>(gym->plates) : std::span<const PlatePairs>();
}

MassUnit unitOfPlates(const Gym* gym, MassUnit wished)
{
    const auto plates = platesIn(gym);
    const auto isWished = [&](const PlatePairs& entry) { return entry.plate.unit() == wished; };
    return plates.empty() || std::ranges::any_of(plates, isWished) ? wished : plates.front().plate.unit();
}

std::vector<PlatePairs> platesOfUnit(const Gym* gym, MassUnit unit)
{
    std::vector<PlatePairs> plates;
    std::ranges::copy_if(platesIn(gym), std::back_inserter(plates),
                         [&](const PlatePairs& entry) { return entry.plate.unit() == unit; });
    return plates;
}

// As written: exact where three decimals can be, else two.
Load written(Mass mass, MassUnit unit)
{
    const Load fine = Load::nearest(mass, unit, Load::kMaxDecimals);
    return fine.mass() == mass ? fine : Load::nearest(mass, unit);
}

bool sameLoad(Mass a, Mass b)
{
    return a - b <= kSameLoad && b - a <= kSameLoad;
}

}  // namespace

LoadFinder::LoadFinder(const Gym* gym, MassUnit unit)
    : m_gym(gym),
      m_unit(unit),
      m_plateUnit(unitOfPlates(gym, unit)),
      m_barPlates(platesIn(gym)),
      m_barPlatesOfOneUnit(platesOfUnit(gym, m_plateUnit)),
      m_beltPlates(platesIn(gym), PlateSearch::Hang::Singly),
      m_beltPlatesOfOneUnit(platesOfUnit(gym, m_plateUnit), PlateSearch::Hang::Singly)
{}

LoadFinder::Grid LoadFinder::defaultGrid(const Variant& variant) const
{
    const bool perHand = variant.loading == Loading::PerHand;
    const Mass fallback = m_unit == MassUnit::lb ? kDefaultStepPounds * Mass::fromSteps(kStepsPerPound)
                          : perHand              ? massFromGrams(kDefaultStepPerHandGrams)
                                                 : massFromGrams(kDefaultStepGrams);
    Grid grid{Mass(), fallback, std::nullopt, m_unit, {AddOns()}};
    if (variant.step && variant.step->mass() > Mass()) {
        grid.step = variant.step->mass();
        grid.unit = variant.step->unit();
    }
    // Nobody lifts a dumbbell or a pin of nothing; hanging nothing on, or taking nothing off, is a load.
    if (perHand || variant.loading == Loading::Stack) grid.first = grid.step;
    if (variant.loading == Loading::BarTotal)
        if (const auto bar = barFor(m_gym, variant)) {
            // Steps go up from the bar; a bar of the other unit starts at the next whole step instead.
            const std::int64_t steps = (bar->mass().steps() + grid.step.steps() - 1) / grid.step.steps();
            grid.first = bar->unit() == grid.unit ? bar->mass() : steps * grid.step;
        }
    return grid;
}

std::vector<LoadFinder::AddOns> LoadFinder::addOnsOf(const LoadRun& run)
{
    std::vector<Load> plates = run.addOns;
    std::erase_if(plates, [](const Load& plate) { return plate.mass() <= Mass(); });
    std::ranges::stable_sort(plates, [](const Load& a, const Load& b) { return a.mass() > b.mass(); });
    if (plates.size() > kMostAddOns) plates.resize(kMostAddOns);
    std::vector<AddOns> all{AddOns()};
    for (const Load& plate : plates)
        for (std::size_t i = 0, count = all.size(); i < count; ++i) {
            AddOns more = all[i];
            more.sum = more.sum + plate.mass();
            more.plates.push_back(plate);
            all.push_back(std::move(more));
        }
    std::ranges::stable_sort(all, [](const AddOns& a, const AddOns& b) {
        return a.sum != b.sum ? a.sum < b.sum : a.plates.size() < b.plates.size();
    });
    const auto twins = std::ranges::unique(all, {}, &AddOns::sum);
    all.erase(twins.begin(), twins.end());
    return all;
}

LoadFinder::Spot LoadFinder::spotOn(const Grid& grid, Mass pin, const AddOns& addOns, bool stack)
{
    Spot spot{pin + addOns.sum, grid.unit};
    if (!stack) return spot;
    spot.pin = written(pin, grid.unit);
    spot.plates = addOns.plates;
    return spot;
}

void LoadFinder::addPlates(Ladder& ladder, const PlateSearch& all, const PlateSearch& ofOneUnit) const
{
    ladder.usual = {.plates = &ofOneUnit, .unit = m_plateUnit};
    const auto isOther = [&](const PlatePairs& entry) { return entry.plate.unit() != m_plateUnit; };
    if (std::ranges::any_of(m_gym->plates, isOther)) ladder.mixed = Rungs{.plates = &all, .unit = m_plateUnit};
}

void LoadFinder::addRuns(Ladder& ladder, const Variant& variant) const
{
    const std::vector<LoadRun>* runs = nullptr;
    if (m_gym && variant.loading == Loading::PerHand) runs = &m_gym->dumbbells;
    if (m_gym && variant.loading == Loading::Stack) runs = &m_gym->stacks;
    std::vector<Grid> grids;
    const auto fits = [&](const LoadRun& run) { return variant.step && run.step.mass() == variant.step->mass(); };
    const bool choose = runs && variant.loading == Loading::Stack && std::any_of(runs->begin(), runs->end(), fits);
    if (runs)
        for (const LoadRun& run : *runs)
            if (run.step.mass() > Mass() && (!choose || fits(run)))
                grids.push_back({run.first.mass(), run.step.mass(), run.last.mass(), run.first.unit(), addOnsOf(run)});
    ladder.stack = !grids.empty() && variant.loading == Loading::Stack;
    if (grids.empty()) grids.push_back(defaultGrid(variant));
    std::ranges::copy_if(grids, std::back_inserter(ladder.usual.grids),
                         [&](const Grid& grid) { return grid.unit == m_unit; });
    if (ladder.usual.grids.size() == grids.size()) return;
    if (ladder.usual.grids.empty())
        ladder.usual.grids = std::move(grids);
    else
        ladder.mixed = Rungs{.grids = std::move(grids)};
}

LoadFinder::Ladder LoadFinder::ladderOf(const Variant& variant) const
{
    Ladder ladder;
    if (variant.loading == Loading::BarTotal && m_barPlates.hasPlates())
        if (const auto bar = barFor(m_gym, variant)) {
            addPlates(ladder, m_barPlates, m_barPlatesOfOneUnit);
            ladder.emptyBar = bar->mass();
            // Collars belong to bars with sleeves, not to plate-loaded machines.
            const bool sleeves =
                variant.implement == Implement::StraightBar || variant.implement == Implement::AngledBar;
            if (sleeves && m_gym->collarPair) ladder.emptyBar = ladder.emptyBar + m_gym->collarPair->mass();
            return ladder;
        }
    if (variant.loading == Loading::Added && !variant.step && m_beltPlates.hasPlates())
        addPlates(ladder, m_beltPlates, m_beltPlatesOfOneUnit);
    else
        addRuns(ladder, variant);
    return ladder;
}

std::optional<LoadFinder::Spot> LoadFinder::upTo(const Rungs& rungs, const Ladder& ladder, Mass limit)
{
    if (rungs.plates) {
        const auto total = rungs.plates->heaviestUpTo(limit, ladder.emptyBar);
        return total ? std::optional(Spot{*total, rungs.unit, {}, {}, rungs.plates}) : std::nullopt;
    }
    std::optional<Spot> best;
    // Few small plates before many where both make the same load.
    const auto isBetter = [&](Mass mass, const AddOns& addOns) {
        return !best || mass > best->mass || (mass == best->mass && addOns.plates.size() < best->plates.size());
    };
    for (const Grid& grid : rungs.grids)
        for (const AddOns& addOns : grid.addOns) {
            const Mass top = std::min(limit - addOns.sum, grid.last.value_or(kHeaviestLoad));
            if (top < grid.first) continue;
            const Mass pin = grid.first + ((top - grid.first).steps() / grid.step.steps()) * grid.step;
            if (isBetter(pin + addOns.sum, addOns)) best = spotOn(grid, pin, addOns, ladder.stack);
        }
    return best;
}

std::optional<LoadFinder::Spot> LoadFinder::from(const Rungs& rungs, const Ladder& ladder, Mass limit)
{
    if (rungs.plates) {
        const auto total = rungs.plates->lightestFrom(limit, ladder.emptyBar);
        return total ? std::optional(Spot{*total, rungs.unit, {}, {}, rungs.plates}) : std::nullopt;
    }
    std::optional<Spot> best;
    const auto isBetter = [&](Mass mass, const AddOns& addOns) {
        return !best || mass < best->mass || (mass == best->mass && addOns.plates.size() < best->plates.size());
    };
    for (const Grid& grid : rungs.grids)
        for (const AddOns& addOns : grid.addOns) {
            const std::int64_t gap = std::max<std::int64_t>(0, (limit - addOns.sum - grid.first).steps());
            const Mass pin = grid.first + ((gap + grid.step.steps() - 1) / grid.step.steps()) * grid.step;
            if (pin > grid.last.value_or(kHeaviestLoad)) continue;
            if (isBetter(pin + addOns.sum, addOns)) best = spotOn(grid, pin, addOns, ladder.stack);
        }
    return best;
}

// One unit where it reaches over the limit, else both.
const LoadFinder::Rungs& LoadFinder::rungsFor(const Ladder& ladder, Mass limit)
{
    if (!ladder.mixed) return ladder.usual;
    const bool reaches = upTo(ladder.usual, ladder, limit) && from(ladder.usual, ladder, limit);
    return reaches ? ladder.usual : *ladder.mixed;
}

std::optional<LoadFinder::Spot> LoadFinder::upTo(const Ladder& ladder, Mass limit)
{
    return upTo(rungsFor(ladder, limit), ladder, limit);
}

std::optional<LoadFinder::Spot> LoadFinder::from(const Ladder& ladder, Mass limit)
{
    return from(rungsFor(ladder, limit), ladder, limit);
}

std::vector<Load> LoadFinder::platesOf(const Spot& spot, const Ladder& ladder)
{
    return spot.hung ? spot.hung->platesFor(spot.mass, ladder.emptyBar) : spot.plates;
}

LoadChoice LoadFinder::nearest(Mass target, const Variant& variant) const
{
    const Ladder ladder = ladderOf(variant);
    auto below = upTo(ladder, target);
    auto above = from(ladder, target);
    LoadChoice choice;
    const auto isTarget = [&](const std::optional<Spot>& spot) { return spot && sameLoad(spot->mass, target); };
    // A load that stands in the record may have been made of both units.
    if (ladder.mixed && !isTarget(below) && !isTarget(above))
        for (auto& found : {upTo(*ladder.mixed, ladder, target), from(*ladder.mixed, ladder, target)})
            if (isTarget(found)) below = above = found;
    if (!below && !above) return choice;
    Spot spot = below ? *below : *above;
    if (below && above) {
        const Mass under = target - below->mass;
        const Mass over = above->mass - target;
        // Of two that are equally near the one with fewer plates on the bar; a pin or a dumbbell: the lighter.
        const auto hasFewer = [&] { return platesOf(*above, ladder).size() < platesOf(*below, ladder).size(); };
        if (over < under || (over == under && spot.hung && hasFewer())) spot = *above;
    }
    choice.pin = spot.pin;
    choice.plates = platesOf(spot, ladder);
    choice.total = spot.mass;
    choice.load = written(spot.mass, spot.unit);
    choice.exact = sameLoad(spot.mass, target);
    choice.underEmptyBar = !choice.exact && !below && variant.loading == Loading::BarTotal;
    if (!choice.exact && below) choice.below = written(below->mass, below->unit);
    if (!choice.exact && above) choice.above = written(above->mass, above->unit);
    return choice;
}

std::optional<Load> LoadFinder::next(const Load& current, const Variant& variant, LoadChange change) const
{
    const Ladder ladder = ladderOf(variant);
    const bool up = (change == LoadChange::Harder) != (variant.loading == Loading::Assisted);
    const Mass beyond = kSameLoad + Mass::fromSteps(1);
    const auto spot = up ? from(ladder, current.mass() + beyond) : upTo(ladder, current.mass() - beyond);
    return spot ? std::optional(written(spot->mass, spot->unit)) : std::nullopt;
}

std::vector<Load> LoadFinder::between(Mass low, Mass high, const Variant& variant, std::size_t most) const
{
    const Ladder ladder = ladderOf(variant);
    std::vector<Load> loads;
    auto spot = from(ladder, low);
    while (spot && spot->mass <= high && loads.size() < most) {
        loads.push_back(written(spot->mass, spot->unit));
        spot = from(ladder, spot->mass + kSameLoad + Mass::fromSteps(1));
    }
    return loads;
}

LoadChoice nearestLoadable(Mass target, const Variant& variant, const Gym* gym, MassUnit unit)
{
    return LoadFinder(gym, unit).nearest(target, variant);
}

std::optional<Load> nextLoadable(const Load& current, const Variant& variant, const Gym* gym, MassUnit unit,
                                 LoadChange change)
{
    return LoadFinder(gym, unit).next(current, variant, change);
}

std::vector<Load> loadablesBetween(Mass low, Mass high, const Variant& variant, const Gym* gym, MassUnit unit)
{
    return LoadFinder(gym, unit).between(low, high, variant);
}

}  // namespace steelyard
