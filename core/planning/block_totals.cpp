#include "core/planning/block_totals.h"

#include "core/planning/block_limits.h"
#include "core/planning/session_time.h"

#include "core/analysis/discomfort_zones.h"

#include <algorithm>
#include <map>

namespace steelyard {
namespace {

std::optional<MuscleAim> aimFor(const Block& block, const Athlete& athlete, Id<Muscle> muscle)
{
    for (const auto* aims : {&block.aims, &athlete.aims}) {
        const auto found = std::ranges::find(*aims, muscle, &MuscleAim::muscle);
        if (found != aims->end()) return *found;
    }
    return std::nullopt;
}

DayTotal totalOf(const PlannedDay& day, const Library& library)
{
    DayTotal total{.date = day.date, .minutes = minutesOf(day, library)};
    for (const Slot& slot : day.slotList) {
        total.sets += slot.sets;
        const auto* variant = library.find(slot.variant);
        if (!variant) continue;
        const BackLoading back = variant->value.backLoading;
        if (back == BackLoading::High) total.hasHighBack = true;
        if (back != BackLoading::None) total.backSets += slot.sets * (back == BackLoading::High ? 1 : kSomeBackShare);
    }
    return total;
}

std::map<Id<Muscle>, double> plannedMuscleSets(const PlannedWeek& week, const Library& library)
{
    std::map<Id<Muscle>, double> sums;
    for (const PlannedDay& day : week.days)
        for (const Slot& slot : day.slotList)
            for (const MuscleShare& share : sharesOf(slot, library)) sums[share.muscle] += slot.sets * share.share;
    return sums;
}

WeekTotal totalOf(const PlannedWeek& week, const TotalsInput& input)
{
    WeekTotal total;
    for (const PlannedDay& day : week.days) {
        total.days.push_back(totalOf(day, input.library));
        total.sets += total.days.back().sets;
    }
    const auto sums = plannedMuscleSets(week, input.library);
    for (const Row<Muscle>& muscle : input.library.muscles) {
        const auto sum = sums.find(muscle.id);
        const auto aim = aimFor(input.block, input.log.athlete.value, muscle.id);
        if (sum == sums.end() && !aim) continue;
        MuscleTotal row{muscle.id, sum == sums.end() ? 0 : sum->second, {}, {}};
        if (aim) {
            row.low = aim->weeklySetsLow;
            row.high = aim->weeklySetsHigh;
        }
        total.muscles.push_back(row);
    }
    return total;
}

}  // namespace

std::span<const MuscleShare> sharesOf(const Slot& slot, const Library& library)
{
    const auto* variant = library.find(slot.variant);
    const auto* exercise = variant ? library.find(variant->value.exercise) : nullptr;
    return exercise ? std::span<const MuscleShare>(exercise->value.shares) : std::span<const MuscleShare>();
}

std::vector<JointComplaint> complaintsOf(const AthleteLog& log, QDate today)
{
    const QDate from = today.addDays(-kDaysOfPlanWeek * kComplaintWeeks);
    std::map<std::pair<Joint, Id<Exercise>>, JointComplaint> worst;
    for (const LineRecord& line : log.lines)
        for (const Exposure& exposure : line.exposures) {
            if (exposure.date <= from || exposure.date > today) continue;
            for (std::size_t joint = 0; joint < kJointCount; ++joint) {
                const auto& rating = exposure.rating.discomfort[joint];
                if (!rating || discomfortZone(*rating) == DiscomfortZone::Safe) continue;
                const JointComplaint said{static_cast<Joint>(joint), *rating, exposure.date, line.exercise.id};
                const auto at = worst.try_emplace({said.joint, said.exercise}, said).first;
                if (std::pair(said.rating, said.date) > std::pair(at->second.rating, at->second.date))
                    at->second = said;
            }
        }
    std::vector<JointComplaint> complaints;
    complaints.reserve(worst.size());
    for (const auto& [key, said] : worst) complaints.push_back(said);
    return complaints;
}

BlockTotals blockTotals(const TotalsInput& input)
{
    BlockTotals totals;
    totals.minutesWanted =
        input.block.minutesPerDay ? input.block.minutesPerDay : input.log.athlete.value.minutesPerDay;
    totals.complaints = complaintsOf(input.log, input.today);
    for (const PlannedWeek& week : input.block.weeks) totals.weeks.push_back(totalOf(week, input));
    totals.broken = brokenLimits(input, totals);
    return totals;
}

}  // namespace steelyard
