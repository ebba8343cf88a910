// How much more a lifter reports in reserve than was planned: a plan that asks for two and always gets three brings one repetition
// fewer than it counts on.
//
//   const double reported = plannedRir + reserveHabit(log, today);
//
// From the last kHabitSets working sets that were done on a planned day with a planned reserve and have a reported one. A set stops
// at a whole repetition: who is to keep two stops with two to three left, and writes down the nearest whole number, half a
// repetition more than was asked for. That is what is expected beforehand (kUsualHabit), with the weight of kHabitWeight sets; our
// convention. Sets to failure have no reserve to misjudge.
//
// Units: repetitions. Pure; no failures.
#pragma once

#include "core/analysis/athlete_log.h"

namespace steelyard {

inline constexpr std::size_t kHabitSets = 30;
inline constexpr double kUsualHabit = 0.5;
inline constexpr double kHabitWeight = 6;

[[nodiscard]] double reserveHabit(const AthleteLog& log, QDate until);

}  // namespace steelyard
