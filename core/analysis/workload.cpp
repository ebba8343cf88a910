#include "core/analysis/workload.h"

#include "core/analysis/counting.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numeric>

namespace steelyard {
namespace {

struct DayWork {
    int sets = 0;
    int deloadSets = 0;
    int effortSets = 0;
    double effortSum = 0;
    double volumeKg = 0;

    // See the header: absent when too little was written down.
    [[nodiscard]] std::optional<double> effort() const
    {
        if (sets == 0) return 0.0;
        if (2 * effortSets < sets) return std::nullopt;
        return effortSum / effortSets * sets;
    }
};

std::optional<double> kilogramsMoved(const LineRecord& line, const SetEntry& set, std::optional<double> bodyKg)
{
    const Loading loading = line.variant.value.loading;
    if (!bodyKg) return std::nullopt;
    return systemKg(loading, set.load.kilograms(), *bodyKg) * (loading == Loading::PerHand ? 2 : 1);
}

void addWork(DayWork& day, const LineRecord& line, const SetEntry& set, std::optional<double> bodyKg)
{
    if (set.kind == SetKind::WarmUp) return;
    ++day.sets;
    if (set.kind == SetKind::Deload) ++day.deloadSets;
    if (const auto effort = effortOf(set)) {
        ++day.effortSets;
        day.effortSum += *effort;
    }
    day.volumeKg += set.reps * kilogramsMoved(line, set, bodyKg).value_or(0);
}

std::map<QDate, DayWork> workByDay(const AthleteLog& log, QDate first, QDate last)
{
    std::map<QDate, DayWork> days;
    for (const LineRecord& line : log.lines)
        for (const Exposure& exposure : line.exposures) {
            if (exposure.date < first || exposure.date > last) continue;
            const auto body = bodyPartKg(line.variant.value.loading, log.bodyMass, exposure.date);
            for (const LoggedSet& logged : exposure.sets) addWork(days[exposure.date], line, logged.set, body);
        }
    return days;
}

bool plannedDeload(const AthleteLog& log, QDate monday)
{
    return std::ranges::any_of(log.blocks, [&](const Row<Block>& block) {
        const auto week = weekOfBlock(block.value, monday);
        return week && block.value.weeks[*week].kind == WeekKind::Deload;
    });
}

WeekLoad loadOfWeek(const std::map<QDate, DayWork>& days, QDate monday, QDate last)
{
    WeekLoad week;
    week.monday = monday;
    week.closed = monday.addDays(6) <= last;
    std::array<double, 7> loads{};
    bool known = true;
    int deloadSets = 0;
    for (std::size_t i = 0; i < loads.size(); ++i) {
        const auto day = days.find(monday.addDays(static_cast<qint64>(i)));
        if (day == days.end() || day->second.sets == 0) continue;
        const DayWork& work = day->second;
        ++week.sessions;
        week.sets += work.sets;
        week.effortSets += work.effortSets;
        week.volumeKg += work.volumeKg;
        deloadSets += work.deloadSets;
        known = known && work.effort().has_value();
        loads[i] = work.effort().value_or(0);
    }
    week.deload = week.sets > 0 && deloadSets == week.sets;
    if (!known) return week;
    const FosterWeek foster = fosterWeek(loads);
    week.effort = foster.load;
    if (!week.closed) return week;
    week.monotony = foster.monotony;
    week.strain = foster.strain;
    return week;
}

}  // namespace

FosterWeek fosterWeek(std::span<const double, 7> days)
{
    constexpr double kDays = 7;
    FosterWeek week;
    week.load = std::accumulate(days.begin(), days.end(), 0.0);
    const double mean = week.load / kDays;
    double squares = 0;
    for (const double day : days) squares += (day - mean) * (day - mean);
    const double sd = std::sqrt(squares / (kDays - 1));
    // Days alike but for rounding would give a monotony of billions.
    if (!(sd > 1e-9 * std::abs(mean))) return week;
    week.monotony = mean / sd;
    week.strain = week.load * *week.monotony;
    return week;
}

std::optional<double> effortOf(const SetEntry& set)
{
    constexpr double most = 10;
    if (set.failed) return most;
    if (!set.effort) return std::nullopt;
    const double said = set.effort->value.toDouble();
    return std::clamp(set.effort->scale == Effort::Scale::Rpe ? said : most - said, 1.0, most);
}

std::vector<WeekLoad> weekLoads(const AthleteLog& log, QDate first, QDate last)
{
    std::vector<WeekLoad> weeks;
    if (!first.isValid() || !last.isValid()) return weeks;
    const auto days = workByDay(log, mondayOf(first), last);
    for (QDate monday = mondayOf(first); monday <= last; monday = monday.addDays(7)) {
        weeks.push_back(loadOfWeek(days, monday, last));
        weeks.back().deload = weeks.back().deload || plannedDeload(log, monday);
    }
    return weeks;
}

}  // namespace steelyard
