// How many working sets a muscle got: a set counts 1 for the target and its share for each helper.
//
//   const auto sets = muscleSets(log, monday, sunday);   // by muscle
//   sets.at(biceps) / 3                                   // a week, if those were three weeks
//   muscleSetsByWeek(log, monday, today).back().at(biceps)
//
// Counting a helper as a fraction (half, usually; the library says) fits growth better than counting it fully or not at
// all: Pelland et al. 2025, Sports Med, doi 10.1007/s40279-025-02344-w. Warm-up and deload sets don't count.
//
// Pure; no failures. Muscles without a set are absent.
#pragma once

#include "core/analysis/athlete_log.h"

#include <map>

namespace steelyard {

// Of the days from `first` to `last`, both included.
[[nodiscard]] std::map<Id<Muscle>, double> muscleSets(const AthleteLog&, QDate first, QDate last);
// The same for every seven days from `first` on that begin no later than `last`; nothing after `last` counts.
[[nodiscard]] std::vector<std::map<Id<Muscle>, double>> muscleSetsByWeek(const AthleteLog&, QDate first, QDate last);

}  // namespace steelyard
