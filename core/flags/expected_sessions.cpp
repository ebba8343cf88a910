#include "core/flags/expected_sessions.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kHabitWeeks = 8;

// Planned days in (from, to]; absent when no block covers the whole span.
std::optional<double> plannedBetween(const AthleteLog& log, QDate from, QDate to)
{
    for (const Row<Block>& block : log.blocks) {
        const QDate end = block.value.start.addDays(7 * static_cast<qint64>(block.value.weeks.size()));
        if (block.value.start > from.addDays(1) || end <= to) continue;
        int days = 0;
        for (const PlannedWeek& week : block.value.weeks)
            for (const PlannedDay& day : week.days)
                if (day.date > from && day.date <= to) ++days;
        return days;
    }
    return std::nullopt;
}

}  // namespace

int sessionsBetween(const AthleteLog& log, QDate from, QDate to)
{
    return static_cast<int>(
        std::ranges::count_if(log.sessionDates, [&](QDate date) { return date > from && date <= to; }));
}

std::optional<double> expectedSessions(const AthleteLog& log, QDate from, QDate to)
{
    const double weeks = static_cast<double>(from.daysTo(to)) / 7;
    if (const auto planned = plannedBetween(log, from, to)) return planned;
    if (log.athlete.value.daysPerWeek) return *log.athlete.value.daysPerWeek * weeks;
    // The last habit there was: a lifter who stays away stays missed, whatever the time since.
    std::optional<QDate> until;
    for (const QDate date : log.sessionDates)
        if (date <= from) until = date;
    if (!until) return std::nullopt;
    const QDate start = std::max(until->addDays(-7 * kHabitWeeks), log.sessionDates.front().addDays(-1));
    const double span = std::max(1.0, static_cast<double>(start.daysTo(*until)) / 7);
    return sessionsBetween(log, start, *until) / span * weeks;
}

}  // namespace steelyard
