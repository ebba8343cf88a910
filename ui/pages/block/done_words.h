// What was planned beside what was done, in words: for a week of the strip and for the week in sight.
//
//   sessionsDoneWords(adherence)           "3 of 3 sessions"
//   besideWords(week, block)               "Done of this week's plan: 3 of 3 sessions, 44 of 48 sets, …"
//
// A part of nothing isn't named; empty: nothing was to be done yet.
#pragma once

#include "core/planning/planned_beside_done.h"

namespace steelyard {

[[nodiscard]] QString sessionsDoneWords(const Adherence&);
[[nodiscard]] QString setsDoneWords(const Adherence&);
[[nodiscard]] QString besideWords(const Adherence& week, const Adherence& block);
// What "on target" means.
[[nodiscard]] QString onTargetWords();

}  // namespace steelyard
