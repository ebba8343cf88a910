// Whether a gym has what a variant is done with.
//
//   gymOffers(&gym, variant)        false for a cable variant where the gym lists bars, plates and dumbbells but no stack
//
// A gym that lists nothing says nothing, and no gym at all neither: everything is possible then. What is done with the body alone,
// or with implements that no gym lists (bands, "other"), always is. Pure; no failures.
#pragma once

#include "core/domain/gym.h"

namespace steelyard {

[[nodiscard]] bool gymOffers(const Gym* gym, const Variant& variant);

}  // namespace steelyard
