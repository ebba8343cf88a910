// What a lifter's record says to whoever plans: which lines were done and how they felt, on which weekdays and how much was
// trained.
//
//   lineSummary(line, today).felt                // 7.5: median of what was felt in the target, 0..10
//   trainedWeekdays(log, today)                  // {0, 8, 0, 8, 0, 7, 0}: sessions by weekday
//
// Looks back kDoneWeeks for what was done, kRecordWeeks for habits and ratings; our conventions.
// Pure; no failures. Not rated is absent, never zero.
#pragma once

#include "core/analysis/athlete_log.h"

#include <map>

namespace steelyard {

inline constexpr int kDoneWeeks = 26;
inline constexpr int kRecordWeeks = 8;
inline constexpr std::size_t kWeekdays = 7;

struct LineSummary {
    int sessions = 0;  // within kDoneWeeks
    std::optional<QDate> last;
    std::optional<double> felt;   // median over kRecordWeeks
    int limiterRated = 0;         // sessions that say what gave out first
    int targetFirst = 0;          // of these, the target
    std::optional<RepBand> band;  // of its newest planned slot
    std::optional<int> restSeconds;
};
[[nodiscard]] LineSummary lineSummary(const AthleteLog&, const LineRecord&, QDate today);

// Sessions by weekday, Monday first, within kRecordWeeks.
[[nodiscard]] std::array<int, kWeekdays> trainedWeekdays(const AthleteLog&, QDate today);
// Sessions a week over the weeks with any; absent without a session.
[[nodiscard]] std::optional<double> sessionsAWeek(const AthleteLog&, QDate today);
// Weekly sets by muscle over the weeks with a session.
[[nodiscard]] std::map<Id<Muscle>, double> usualWeeklySets(const AthleteLog&, QDate today);

}  // namespace steelyard
