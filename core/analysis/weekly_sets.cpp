#include "core/analysis/weekly_sets.h"

#include "core/analysis/counting.h"

#include <algorithm>

namespace steelyard {

std::map<Id<Muscle>, double> muscleSets(const AthleteLog& log, QDate first, QDate last)
{
    std::map<Id<Muscle>, double> sums;
    for (const LineRecord& line : log.lines) {
        double sets = 0;
        for (const Exposure& exposure : line.exposures)
            if (exposure.date >= first && exposure.date <= last)
                sets += static_cast<double>(std::ranges::count_if(
                    exposure.sets, [](const LoggedSet& logged) { return isWorkingSet(logged.set); }));
        if (sets == 0) continue;
        for (const MuscleShare& share : line.exercise.value.shares) sums[share.muscle] += sets * share.share;
    }
    return sums;
}

}  // namespace steelyard
