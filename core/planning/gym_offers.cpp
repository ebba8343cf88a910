#include "core/planning/gym_offers.h"

#include <algorithm>

namespace steelyard {
namespace {

bool hasBar(const Gym& gym, Implement implement)
{
    return std::ranges::any_of(gym.bars, [&](const GymBar& bar) { return bar.implement == implement; });
}

bool saysNothing(const Gym& gym)
{
    return gym.bars.empty() && gym.plates.empty() && gym.dumbbells.empty() && gym.stacks.empty();
}

}  // namespace

bool gymOffers(const Gym* gym, const Variant& variant)
{
    if (!gym || saysNothing(*gym)) return true;
    switch (variant.implement) {
    case Implement::StraightBar:
    case Implement::AngledBar:
        return hasBar(*gym, variant.implement);
    case Implement::Dumbbells:
        return !gym->dumbbells.empty();
    case Implement::Cable:
    case Implement::Machine:
        return !gym->stacks.empty();
    case Implement::PlateMachine:
    case Implement::GuidedBar:
        return hasBar(*gym, variant.implement) || (!gym->plates.empty() && variant.barMass);
    case Implement::Bodyweight:
    case Implement::Other:
        return true;
    }
    return true;
}

}  // namespace steelyard
