#include "core/analysis/reserve_habit.h"

#include "core/analysis/counting.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr double kLeastReserve = 0.5;  // below it a set goes to failure
constexpr double kMostHabit = 3;       // beyond it somebody wrote down something else

struct HabitSet {
    QDate date;
    double more = 0;
};

void hearSlot(std::vector<HabitSet>& heard, const AthleteLog& log, const Slot& slot, QDate date)
{
    const double planned = slot.plannedRir->toDouble();
    for (const LineRecord& line : log.lines) {
        if (line.variant.id != slot.variant || line.grip.id != slot.grip || line.standard.id != slot.standard) continue;
        const auto exposure = std::ranges::lower_bound(line.exposures, date, {}, &Exposure::date);
        if (exposure == line.exposures.end() || exposure->date != date) continue;
        for (const LoggedSet& logged : exposure->sets) {
            if (!isWorkingSet(logged.set)) continue;
            if (const auto reserve = reserveOf(logged.set))
                heard.push_back({date, std::clamp(*reserve - planned, -kMostHabit, kMostHabit)});
        }
    }
}

}  // namespace

double reserveHabit(const AthleteLog& log, QDate until)
{
    std::vector<HabitSet> heard;
    for (const Row<Block>& block : log.blocks)
        for (const PlannedWeek& week : block.value.weeks) {
            if (week.kind != WeekKind::Normal) continue;
            for (const PlannedDay& day : week.days)
                for (const Slot& slot : day.slotList)
                    if (day.date <= until && slot.plannedRir && slot.plannedRir->toDouble() >= kLeastReserve)
                        hearSlot(heard, log, slot, day.date);
        }
    std::ranges::stable_sort(heard, {}, &HabitSet::date);
    if (heard.size() > kHabitSets) heard.erase(heard.begin(), heard.end() - kHabitSets);
    double sum = kUsualHabit * kHabitWeight;
    for (const HabitSet& set : heard) sum += set.more;
    return sum / (kHabitWeight + static_cast<double>(heard.size()));
}

}  // namespace steelyard
