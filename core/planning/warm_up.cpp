#include "core/planning/warm_up.h"

namespace steelyard {

std::vector<WarmUpSet> warmUpSets(const Load& working, const Variant& variant, const LoadFinder& loads)
{
    std::vector<WarmUpSet> sets;
    if (variant.loading == Loading::Assisted) return sets;
    const Mass held = (variant.loading == Loading::PerHand ? 2 : 1) * working.mass();
    Mass last;
    for (const WarmUpStep& step : kWarmUpSteps) {
        if (held < step.workingFrom) continue;
        const Mass target = Mass::fromSteps(working.mass().steps() / 100 * step.percent);
        const LoadChoice choice = loads.nearest(target, variant);
        if (choice.total <= last || choice.total + kSameLoad >= working.mass()) continue;
        sets.push_back({choice.load, step.reps, choice.plates});
        last = choice.total;
    }
    return sets;
}

}  // namespace steelyard
