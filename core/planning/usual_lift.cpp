#include "core/planning/usual_lift.h"

namespace steelyard {

std::optional<Id<RepStandard>> usualStandard(const Library& library, Id<Variant> variant, Id<Athlete> athlete)
{
    const auto isFor = [&](const RepStandard& standard) {
        return standard.variant == variant && (!standard.athlete || *standard.athlete == athlete);
    };
    const auto rank = [](const RepStandard& standard) {
        return (standard.athlete ? 2 : 0) + (standard.isDefault ? 1 : 0);
    };
    const Row<RepStandard>* best = nullptr;
    for (const auto& row : library.standards)
        if (isFor(row.value) && (!best || rank(row.value) > rank(best->value))) best = &row;
    return best ? std::optional(best->id) : std::nullopt;
}

std::optional<LiftLine> usualLift(const Library& library, const Row<Variant>& variant, Id<Athlete> athlete,
                                  std::optional<Id<Grip>> otherwise)
{
    const auto standard = usualStandard(library, variant.id, athlete);
    auto grip = variant.value.usualGrip ? variant.value.usualGrip : otherwise;
    if (!grip && !library.grips.empty()) grip = library.grips.front().id;
    if (!standard || !grip) return std::nullopt;
    return LiftLine{athlete, variant.id, *grip, *standard};
}

}  // namespace steelyard
