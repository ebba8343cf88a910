// Reads one athlete's whole record as a value (analysis/athlete_log.h), in one consistent snapshot.
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/storage/database.h"

namespace steelyard {

// Sets after `until` are left out, so that a review as of an earlier day sees what was known then.
[[nodiscard]] Result<AthleteLog> readAthleteLog(Database&, const Library&, Id<Athlete>,
                                                std::optional<QDate> until = std::nullopt);

}  // namespace steelyard
