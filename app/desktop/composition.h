// Builds what the window needs from core. The only place that chooses.
#pragma once

#include "ui/shell/main_window.h"

namespace steelyard {

class EventLog;

[[nodiscard]] MainServices makeServices(const Clock& clock, EventLog& log);

}  // namespace steelyard
