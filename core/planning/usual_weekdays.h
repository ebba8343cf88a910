// On which weekdays a lifter trains: as the last block has it, else as the record shows it.
//
//   usualWeekdays(log, today)       == {1, 3, 5}
//
// Of the last block that has a normal week with sessions, that week's days. Without one, the weekdays with a session in at least half
// of those of the last kHabitWeeks weeks that had any. 1 is Monday; ascending, each once; empty: nothing is known.
// Our convention. Pure; no failures.
#pragma once

#include "core/analysis/athlete_log.h"

namespace steelyard {

inline constexpr int kHabitWeeks = 6;

[[nodiscard]] std::vector<int> usualWeekdays(const AthleteLog& log, QDate today);

}  // namespace steelyard
