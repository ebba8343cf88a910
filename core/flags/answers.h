// Whether the coach has answered a flag lately enough that it need not be looked at now.
//
//   if (const Decision* answer = answerTo(flag, log.decisions, asOf)) ...
//
// The newest decision on the flag's rule and line counts:
//   watch    hides it until its date; on that day it is back
//   dismiss  hides it until it is more urgent than it was, or worse by the step of its measure (FlagMeasure); for
//            kDismissedWeeks where the book doesn't say how urgent that was
//   act      hides it for kActedWeeks, the time an action needs to show
// A rule about single events (pain, a wrong entry, a jump) comes back at once, after a dismissal or an action, when
// something of the kind happened since. A date on which a watch ends may be absent: then it lasts kActedWeeks.
// The weeks are our convention.
#pragma once

#include "core/flags/flag_rule.h"

namespace steelyard {

inline constexpr int kDismissedWeeks = 8;
inline constexpr int kActedWeeks = 3;
// So long a review of the roster may take: who was finished within these days stays so, and is due again in the next week's.
inline constexpr int kRoundDays = 5;

// The newest decision on the flag, whether it still holds or not; null when there was none. Points into `decisions`.
[[nodiscard]] const Decision* newestAnswer(const Flag&, const std::vector<Row<Decision>>& decisions, QDate asOf);
// Null when the flag is open. Points into `decisions`.
[[nodiscard]] const Decision* answerTo(const Flag&, const std::vector<Row<Decision>>& decisions, QDate asOf);

// The day of the newest decision about the lifter.
[[nodiscard]] std::optional<QDate> lastLookedAt(const std::vector<Row<Decision>>& decisions, QDate asOf);
// Whether the lifter is out of this round's queue: looked at as a whole within kRoundDays, or every flag answered with an
// answer that new. What happened since, if it is an open flag about single events, brings them back.
[[nodiscard]] bool isFinished(const std::vector<Flag>& open, const std::vector<Row<Decision>>& decisions, QDate asOf);

}  // namespace steelyard
