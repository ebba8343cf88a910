// Words for the places of the body that a tape goes round, and what it said there.
//
//   format::bodyPlaceWord(BodyPlace::UpperArm)    "upper arm"
//   format::tape(measured)                        "84.5 cm", in the decimals and the unit it was typed in
#pragma once

#include "core/domain/measurement.h"

namespace steelyard::format {

[[nodiscard]] QString bodyPlaceWord(BodyPlace place);
[[nodiscard]] QString tape(const Measurement& measured);

}  // namespace steelyard::format
