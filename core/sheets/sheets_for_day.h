// Who is expected on a day, and their sheets.
//
//   DaySheetMaker maker(library, gyms);
//   if (isExpected(log, date)) sheets.push_back(*maker.make(log, date));
//
// Expected: a planned day, a session of a trial, or a session on that weekday in at least two of the last four weeks. Archived lifters never.
#pragma once

#include "core/sheets/session_sheet.h"

#include <map>
#include <span>

namespace steelyard {

[[nodiscard]] bool isExpected(const AthleteLog& log, QDate date);

// Makes sheets for many lifters, and keeps each gym's plate search. Not for several threads at once.
class DaySheetMaker {
public:
    // Both outlive the maker.
    DaySheetMaker(const Library& library, std::span<const Row<Gym>> gyms) : m_library(library), m_gyms(gyms) {}
    [[nodiscard]] std::optional<SessionSheet> make(const AthleteLog& log, QDate date, const SheetReading& reading = {});

private:
    [[nodiscard]] const SheetEquipment& equipmentOf(const Athlete& athlete);

    const Library& m_library;
    std::span<const Row<Gym>> m_gyms;
    std::map<std::pair<std::int64_t, MassUnit>, SheetEquipment> m_equipment;
};

// Sheets of all that are expected that day, in the order of the logs.
[[nodiscard]] std::vector<SessionSheet> sheetsForDay(std::span<const AthleteLog> logs, const Library& library,
                                                     std::span<const Row<Gym>> gyms, QDate date);

}  // namespace steelyard
