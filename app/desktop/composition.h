// Builds what the window needs from core. The only place that chooses.
#pragma once

#include "ui/shell/main_window.h"

namespace steelyard {

[[nodiscard]] MainServices makeServices(const Clock& clock);

}  // namespace steelyard
