#include "core/book/plan_record.h"

#include "core/storage/athlete_log_reader.h"
#include "core/storage/library_repository.h"

namespace steelyard {

Result<PlanRecord> readPlanRecord(const QString& bookPath, Id<Athlete> athlete, QDate asOf)
{
    STEELYARD_TRY(const auto database, Database::openReader(bookPath));
    STEELYARD_TRY(Library library, LibraryRepository(*database).read());
    STEELYARD_TRY(auto log, readAthleteLog(*database, library, athlete, asOf));
    return PlanRecord{std::move(log), std::move(library)};
}

}  // namespace steelyard
