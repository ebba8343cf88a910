#include "core/sheets/sheets_for_day.h"

#include "core/sheets/sheet_trial.h"

#include <algorithm>

namespace steelyard {

bool isExpected(const AthleteLog& log, QDate date)
{
    if (log.athlete.value.archived) return false;
    if (plannedDayOn(log, date) || !trialSessionsOn(log, date).empty()) return true;
    int weeks = 0;
    for (int back = 1; back <= 4; ++back)
        if (std::ranges::binary_search(log.sessionDates, date.addDays(-7 * back))) ++weeks;
    return weeks >= 2;
}

const SheetEquipment& DaySheetMaker::equipmentOf(const Athlete& athlete)
{
    const std::int64_t gymId = athlete.gym ? athlete.gym->value() : -1;
    const auto found = m_equipment.find({gymId, athlete.unit});
    if (found != m_equipment.end()) return found->second;
    std::optional<Gym> gym;
    for (const Row<Gym>& row : m_gyms)
        if (athlete.gym && row.id == *athlete.gym) gym = row.value;
    return m_equipment.try_emplace({gymId, athlete.unit}, std::move(gym), athlete.unit).first->second;
}

std::optional<SessionSheet> DaySheetMaker::make(const AthleteLog& log, QDate date, const SheetReading& reading)
{
    return buildSessionSheet(log, m_library, equipmentOf(log.athlete.value), date, reading);
}

std::vector<SessionSheet> sheetsForDay(std::span<const AthleteLog> logs, const Library& library,
                                       std::span<const Row<Gym>> gyms, QDate date)
{
    DaySheetMaker maker(library, gyms);
    std::vector<SessionSheet> sheets;
    for (const AthleteLog& log : logs)
        if (isExpected(log, date))
            if (auto sheet = maker.make(log, date)) sheets.push_back(*std::move(sheet));
    return sheets;
}

}  // namespace steelyard
