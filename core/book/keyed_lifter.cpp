#include "core/book/keyed_lifter.h"

#include "core/book/sheet_targets.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/gym_repository.h"
#include "core/storage/library_repository.h"
#include "core/storage/session_reader.h"

#include <algorithm>

namespace steelyard {

Result<KeyedLifter> readKeyedLifter(Database& database, Id<Athlete> athlete, QDate date)
{
    STEELYARD_TRY(auto library, LibraryRepository(database).read());
    STEELYARD_TRY(auto log, readAthleteLog(database, library, athlete, date));
    std::optional<Gym> gym;
    STEELYARD_TRY(const auto gyms, GymRepository(database).all());
    if (log.athlete.value.gym) {
        const auto found = std::ranges::find(gyms, *log.athlete.value.gym, &Row<Gym>::id);
        if (found != gyms.end()) gym = found->value;
    }
    SheetEquipment equipment(std::move(gym), log.athlete.value.unit);
    STEELYARD_TRY(auto targets, SheetTargets::read(database, library, gyms, date));
    SheetReading reading = targets.readingFor(log, date);
    auto sheet = buildSessionSheet(log, library, equipment, date, reading);
    STEELYARD_TRY(auto record, readSession(database, athlete, date));
    return KeyedLifter{std::move(library), std::move(log),    std::move(equipment),
                       std::move(sheet),   std::move(record), std::move(reading.settings)};
}

}  // namespace steelyard
