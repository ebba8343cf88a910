// What planning asks of a lift and of a lifter: which muscle it is for, which half of the body, how trained the lifter is.
#pragma once

#include "core/domain/athlete.h"

namespace steelyard {

// The muscle with the largest share, the first of equals; absent where none is named.
[[nodiscard]] std::optional<Id<Muscle>> targetMuscle(const Exercise& exercise);
// By the target: hips and legs. Unknown is the upper body, whose steps are the smaller ones.
[[nodiscard]] bool trainsLowerBody(const Exercise& exercise, const std::vector<Row<Muscle>>& muscles);
// "Larger, stronger or more trained", as the published steps of load tell lifters apart: not new to training, as far as known.
[[nodiscard]] bool isMoreTrained(const Athlete& athlete);

}  // namespace steelyard
