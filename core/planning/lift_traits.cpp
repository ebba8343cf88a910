#include "core/planning/lift_traits.h"

#include <algorithm>
#include <array>

namespace steelyard {

std::optional<Id<Muscle>> targetMuscle(const Exercise& exercise)
{
    const auto most = std::ranges::max_element(exercise.shares, {}, &MuscleShare::share);
    return most == exercise.shares.end() ? std::nullopt : std::optional(most->muscle);
}

bool trainsLowerBody(const Exercise& exercise, const std::vector<Row<Muscle>>& muscles)
{
    constexpr std::array kLower{u"glutes",    u"quadriceps", u"hamstrings", u"adductors",
                                u"abductors", u"calves",     u"tibialis"};
    const auto target = targetMuscle(exercise);
    const auto muscle = target ? std::ranges::find(muscles, *target, &Row<Muscle>::id) : muscles.end();
    return muscle != muscles.end()
           && std::ranges::any_of(kLower, [&](const char16_t* key) { return muscle->value.key == key; });
}

bool isMoreTrained(const Athlete& athlete)
{
    return athlete.experience.value_or(Experience::Novice) != Experience::Novice;
}

}  // namespace steelyard
