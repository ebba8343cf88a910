#include "core/planning/usual_weekdays.h"

#include <algorithm>
#include <map>
#include <ranges>
#include <set>

namespace steelyard {
namespace {

constexpr int kDaysOfHabitWeek = 7;

std::vector<int> ofLastBlock(const AthleteLog& log)
{
    for (const Row<Block>& row : std::views::reverse(log.blocks))
        for (const PlannedWeek& week : std::views::reverse(row.value.weeks)) {
            std::set<int> weekdays;
            if (week.kind == WeekKind::Normal)
                for (const PlannedDay& day : week.days) weekdays.insert(day.date.dayOfWeek());
            if (!weekdays.empty()) return {weekdays.begin(), weekdays.end()};
        }
    return {};
}

}  // namespace

std::vector<int> usualWeekdays(const AthleteLog& log, QDate today)
{
    if (std::vector<int> planned = ofLastBlock(log); !planned.empty()) return planned;
    std::map<int, int> sessions;  // by weekday
    std::set<qint64> weeks;       // that had any
    const QDate from = today.addDays(-kDaysOfHabitWeek * kHabitWeeks);
    for (const QDate day : log.sessionDates) {
        if (day <= from || day > today) continue;
        ++sessions[day.dayOfWeek()];
        weeks.insert(from.daysTo(day.addDays(-1)) / kDaysOfHabitWeek);
    }
    std::vector<int> usual;
    for (const auto& [weekday, count] : sessions)
        if (2 * count >= std::ssize(weeks)) usual.push_back(weekday);
    return usual;
}

}  // namespace steelyard
