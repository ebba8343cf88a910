// What a lift is called with every part of it, and what was done on its line.
//
//   wholeLiftName(lift, library)        "Arm curl, straight bar · supinated, medium · strict"
//   historyWords(history)               "214 sets since 3 Mar 2024"
//
// No failures; what the library doesn't have is left out.
#pragma once

#include "core/keying/line_change.h"

#include <QtCore/QString>

namespace steelyard {

// Every part, because each makes another line.
[[nodiscard]] QString wholeLiftName(const LiftLine&, const Library&);
[[nodiscard]] QString historyWords(const LineHistory&);

}  // namespace steelyard
