#include "core/planning/proposal/proposal_record.h"

#include "core/analysis/weekly_sets.h"
#include "core/domain/gave_out.h"
#include "core/numerics/robust_trend.h"

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

QDate firstOfRecord(QDate today)
{
    return today.addDays(1 - 7 * kRecordWeeks);
}

void takePlanned(const AthleteLog& log, const LiftLine& line, LineSummary& summary)
{
    for (const Row<Block>& block : log.blocks)
        for (const PlannedWeek& week : block.value.weeks)
            for (const PlannedDay& day : week.days)
                for (const Slot& slot : day.slotList)
                    if (slot.variant == line.variant && slot.grip == line.grip && slot.standard == line.standard) {
                        summary.band = slot.band;
                        summary.restSeconds = slot.restSeconds;
                    }
}

// Sessions of every seven days of the record that have any.
std::vector<int> sessionsByWeek(const AthleteLog& log, QDate today)
{
    std::vector<int> weeks(kRecordWeeks);
    for (const QDate date : log.sessionDates)
        if (date >= firstOfRecord(today) && date <= today)
            ++weeks[static_cast<std::size_t>(firstOfRecord(today).daysTo(date) / 7)];
    return weeks;
}

}  // namespace

LineSummary lineSummary(const AthleteLog& log, const LineRecord& line, QDate today)
{
    LineSummary summary;
    std::vector<double> felt;
    for (const Exposure& exposure : line.exposures) {
        if (exposure.date > today || exposure.date <= today.addDays(-7 * kDoneWeeks)) continue;
        ++summary.sessions;
        summary.last = exposure.date;
        if (exposure.date < firstOfRecord(today)) continue;
        if (const auto value = exposure.rating.felt()) felt.push_back(*value);
        if (exposure.rating.gaveOut.isEmpty()) continue;
        ++summary.limiterRated;
        summary.targetFirst += exposure.rating.gaveOut == kTargetGaveOut ? 1 : 0;
    }
    summary.felt = median(std::move(felt));
    takePlanned(log, line.line, summary);
    return summary;
}

std::array<int, kWeekdays> trainedWeekdays(const AthleteLog& log, QDate today)
{
    std::array<int, kWeekdays> sessions{};
    for (const QDate date : log.sessionDates)
        if (date >= firstOfRecord(today) && date <= today) ++sessions[static_cast<std::size_t>(date.dayOfWeek() - 1)];
    return sessions;
}

std::optional<double> sessionsAWeek(const AthleteLog& log, QDate today)
{
    double sum = 0;
    double weeks = 0;
    for (const int sessions : sessionsByWeek(log, today)) {
        sum += sessions;
        weeks += sessions > 0 ? 1 : 0;
    }
    return weeks > 0 ? std::optional(sum / weeks) : std::nullopt;
}

std::map<Id<Muscle>, double> usualWeeklySets(const AthleteLog& log, QDate today)
{
    const auto trained = std::ranges::count_if(sessionsByWeek(log, today), [](int sessions) { return sessions > 0; });
    auto sets = muscleSets(log, firstOfRecord(today), today);
    for (auto& [muscle, sum] : sets) sum /= static_cast<double>(std::max<std::ptrdiff_t>(trained, 1));
    return sets;
}

}  // namespace steelyard
