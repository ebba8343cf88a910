#include "core/analysis/weekly_sets.h"

#include "core/analysis/counting.h"

#include <algorithm>

namespace steelyard {

namespace {

double workingSets(const Exposure& exposure)
{
    return static_cast<double>(
        std::ranges::count_if(exposure.sets, [](const LoggedSet& logged) { return isWorkingSet(logged.set); }));
}

}  // namespace

std::map<Id<Muscle>, double> muscleSets(const AthleteLog& log, QDate first, QDate last)
{
    std::map<Id<Muscle>, double> sums;
    for (const LineRecord& line : log.lines) {
        double sets = 0;
        for (const Exposure& exposure : line.exposures)
            if (exposure.date >= first && exposure.date <= last) sets += workingSets(exposure);
        if (sets == 0) continue;
        for (const MuscleShare& share : line.exercise.value.shares) sums[share.muscle] += sets * share.share;
    }
    return sums;
}

std::vector<std::map<Id<Muscle>, double>> muscleSetsByWeek(const AthleteLog& log, QDate first, QDate last)
{
    if (!first.isValid() || !last.isValid() || first > last) return {};
    std::vector<std::map<Id<Muscle>, double>> weeks(static_cast<std::size_t>(first.daysTo(last) / 7) + 1);
    for (const LineRecord& line : log.lines)
        for (const Exposure& exposure : line.exposures) {
            if (exposure.date < first || exposure.date > last) continue;
            const double sets = workingSets(exposure);
            if (sets == 0) continue;
            auto& week = weeks[static_cast<std::size_t>(first.daysTo(exposure.date) / 7)];
            for (const MuscleShare& share : line.exercise.value.shares) week[share.muscle] += sets * share.share;
        }
    return weeks;
}

}  // namespace steelyard
