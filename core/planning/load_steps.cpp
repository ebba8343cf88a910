#include "core/planning/load_steps.h"

#include "core/analysis/counting.h"

#include <algorithm>
#include <cmath>

namespace steelyard {

std::optional<Load> workingLoad(const DoneExposure& exposure)
{
    std::optional<Load> best;
    std::size_t most = 0;
    for (const DoneSet& set : exposure) {
        const std::size_t uses = setsAt(exposure, set.load.mass()).size();
        if (uses > most || (uses == most && set.load.mass() > best->mass())) {
            most = uses;
            best = set.load;
        }
    }
    return best;
}

DoneExposure setsAt(const DoneExposure& exposure, Mass mass)
{
    DoneExposure sets;
    for (const DoneSet& set : exposure)
        if (set.load.mass() == mass) sets.push_back(set);
    return sets;
}

bool twoForTwo(const DoneExposure& previous, const DoneExposure& latest, int goalReps)
{
    if (previous.empty() || latest.empty()) return false;
    const DoneSet& before = previous.back();
    const DoneSet& now = latest.back();
    return before.load.mass() == now.load.mass() && before.countedReps >= goalReps + 2
           && now.countedReps >= goalReps + 2;
}

double repCostOfStep(Mass from, Mass to, double reps)
{
    if (from <= Mass()) return 0;  // from body mass alone the rise is no fraction of anything known here
    const double rise = toKilograms(to) / toKilograms(from) - 1.0;
    return (30.0 + reps) * rise / (1.0 + rise);
}

double riseOf(const Variant& variant, const Load& from, const Load& to, double bodyKg)
{
    const double before = systemKg(variant.loading, from.kilograms(), bodyKg);
    const double after = systemKg(variant.loading, to.kilograms(), bodyKg);
    return before > 0 ? after / before - 1 : 0;
}

std::optional<Load> steppedLoad(const LoadFinder& loads, const Variant& variant, const Load& current, LoadChange change,
                                Mass wish, double bodyKg)
{
    const auto smallest = loads.next(current, variant, change);
    if (!smallest || wish <= Mass()) return smallest;
    const bool up = smallest->mass() > current.mass();
    // Assisted work rises as the help falls; never under no help at all.
    const Mass wanted = up ? current.mass() + wish : std::max(Mass(), current.mass() - wish);
    const Load nearest = loads.nearest(wanted, variant).load;
    const auto isBeyond = [&](const Load& load) {
        const bool past = up ? load.mass() > nearest.mass() : load.mass() < nearest.mass();
        return past || (change == LoadChange::Harder && riseOf(variant, current, load, bodyKg) > kMostRise);
    };
    Load stepped = *smallest;
    for (auto next = loads.next(stepped, variant, change); next && !isBeyond(*next);
         next = loads.next(stepped, variant, change))
        stepped = *next;
    return stepped;
}

const PublishedLoadStep& publishedLoadStep(bool moreTrained, bool lowerBody)
{
    return kPublishedLoadSteps[(moreTrained ? 2U : 0U) + (lowerBody ? 1U : 0U)];
}

}  // namespace steelyard
