// How a variant is done where nothing else was said: with its usual grip, to the usual standard.
//
//   usualLift(library, variantRow, athlete)     // absent: the variant has no standard, or there is no grip at all
//
// The standard agreed with this athlete comes before the default one, and that before any. Pure; no failures.
#pragma once

#include "core/domain/logbook.h"

namespace steelyard {

[[nodiscard]] std::optional<Id<RepStandard>> usualStandard(const Library&, Id<Variant>, Id<Athlete>);
// `otherwise`: the grip of a variant without a usual one; without either the first of the library.
[[nodiscard]] std::optional<LiftLine> usualLift(const Library&, const Row<Variant>&, Id<Athlete>,
                                                std::optional<Id<Grip>> otherwise = std::nullopt);

}  // namespace steelyard
