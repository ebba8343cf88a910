// How much work a lifter did by day and week, how even the days of a week were, and both together.
//
//   const auto weeks = weekLoads(log, monday, today);
//   weeks.back().effort        // the week's session effort
//   weeks.back().monotony      // absent: every day alike, an open week, or a day whose effort nobody wrote down
//
// Session effort. Foster's session load is one rating of the whole session (0-10) times its minutes. The logbook holds
// neither, so this is a proxy of the same shape: mean effort of the session's sets on the 1-10 scale tied to repetitions in
// reserve (10 - reserve; a repetition that failed part-way is 10) times the number of sets, which stand in for the minutes.
// Working and deload sets count, warm-ups don't. A day with sets of which less than half have an effort written down has no
// session effort (half: our convention), and neither has its week. A day without training is 0.
//
// Monotony is the mean of the seven days through their standard deviation, strain the week's sum times monotony: Foster 1998,
// Med Sci Sports Exerc 30:1164-1168; for lifting McGuigan & Foster 2004, Strength Cond J 26(6):42-47. The paper doesn't say
// which standard deviation; here it is the sample's (n - 1). With the population's, monotony is sqrt(7/6) = 1.08 times as
// large. There is no published limit that holds for everybody: a lifter's weeks are compared with each other.
//
// Volume load: kilograms moved times repetitions completed, over the same sets. A pair of dumbbells counts both; body mass
// counts where the load hangs on it. A set whose kilograms aren't known is left out.
//
// Weeks run from Monday to Sunday. Pure; no failures.
#pragma once

#include "core/analysis/athlete_log.h"

#include <span>

namespace steelyard {

struct FosterWeek {
    double load = 0;
    std::optional<double> monotony;  // absent: no day differs from another
    std::optional<double> strain;
    friend bool operator==(const FosterWeek&, const FosterWeek&) = default;
};

// Of any seven daily loads, in any unit.
[[nodiscard]] FosterWeek fosterWeek(std::span<const double, 7> days);

struct WeekLoad {
    QDate monday;
    bool closed = false;  // the week is over
    bool deload = false;  // planned as one, or nothing but deload sets
    int sessions = 0;
    int sets = 0;
    int effortSets = 0;            // of these, with their effort written down
    std::optional<double> effort;  // session effort of the week; of an open one so far
    std::optional<double> monotony;
    std::optional<double> strain;
    double volumeKg = 0;
    friend bool operator==(const WeekLoad&, const WeekLoad&) = default;
};

// Effort of a set on the 1-10 scale; absent when none was written down.
[[nodiscard]] std::optional<double> effortOf(const SetEntry&);

// Every week from that of `first` to that of `last`, oldest first, also those without training.
[[nodiscard]] std::vector<WeekLoad> weekLoads(const AthleteLog&, QDate first, QDate last);

[[nodiscard]] inline QDate mondayOf(QDate day)
{
    return day.addDays(1 - day.dayOfWeek());
}

}  // namespace steelyard
