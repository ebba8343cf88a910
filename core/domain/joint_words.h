// What a joint is called in a sentence: "lower back".
#pragma once

#include "core/domain/logbook.h"

namespace steelyard {

[[nodiscard]] QString jointName(Joint joint);

}  // namespace steelyard
