// The draw: which arm on which day.
//
//   STEELYARD_TRY(trial.days, drawDays(trial, {.from = monday, .weekdays = {1, 4}}));
//   ordersThatCouldBeDrawn(2, 6)   == 64
//
// First the sessions that get the lifter used to each arm (block 0, in turns, they don't count), then Trial::blocks blocks
// that hold every arm once each, in an order drawn for each block by itself. Every order of a block is equally likely, which is
// what the randomisation test rests on. The same trial and calendar give the same draw on every machine: it comes from
// Trial::seed alone, and days off or other weekdays move dates, never the order.
//
// Source of the design: Kravitz & Duan (eds) 2014, AHRQ 13(14)-EHC122, chapter 4.
// Failures: Invalid, with a sentence that says what doesn't fit: no weekdays, no arms, or days off that leave no room before
// `last`.
#pragma once

#include "core/base/result.h"
#include "core/domain/trial.h"

namespace steelyard {

struct TrialCalendar {
    QDate from;                         // the first day that may be trained
    std::vector<int> weekdays = {};     // 1 is Monday; on which the athlete trains this lift
    std::vector<DaysOff> daysOff = {};  // skipped
    std::optional<QDate> last = {};     // the last day that may be trained; absent: as long as it takes
};

// As long as it takes ends here; a trial that is longer has lost its question.
inline constexpr int kLongestTrialDays = 3 * 365;

// Days by date. Never nearer to each other than Trial::daysBetween.
[[nodiscard]] Result<std::vector<TrialDay>> drawDays(const Trial&, const TrialCalendar&);
// The same arms in the same order from `calendar.from` on, for the days after `kept` (days that are past stay as they are): a
// trial that was interrupted goes on.
[[nodiscard]] Result<std::vector<TrialDay>> moveDays(const Trial&, std::size_t kept, const TrialCalendar&);

// Orders of arms in all counting blocks, each as likely as the others: (arms!) ^ blocks. A double, because it grows beyond any
// integer; exact up to 2^53.
[[nodiscard]] double ordersThatCouldBeDrawn(std::size_t arms, int blocks);
// Smallest probability that a randomisation test of that design can give (two-sided where there are two arms: 2 / 2^blocks).
[[nodiscard]] double smallestPossibleP(std::size_t arms, int blocks);

}  // namespace steelyard
