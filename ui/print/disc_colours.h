// The colours of discs in the international weightlifting rules, for the band on a drawn disc. Colour only repeats the number.
//
//   discColour(massFromGrams(20'000))    blue;     discColour(1.25 kg)   nothing: the rules don't have such a disc
//
// Source: IWF Technical and Competition Rules & Regulations, "Discs": 25 kg red, 20 kg blue, 15 kg yellow, 10 kg green, 5 kg white, and
// again from 2.5 kg red, 2 kg blue, 1.5 kg yellow, 1 kg green, 0.5 kg white. The shades are ours: the rules name only the colours.
#pragma once

#include "core/base/quantity.h"

#include <QtGui/QColor>

#include <optional>

namespace steelyard {

enum class DiscColour { Red, Blue, Yellow, Green, White };

[[nodiscard]] std::optional<DiscColour> discColour(Mass disc);
[[nodiscard]] QColor inkOf(DiscColour colour);

}  // namespace steelyard
