// What planning looks at: a lifter's record with its blocks, and the library to choose from. The work of
// a background job, through a connection of its own. Fails with NotFound, Storage.
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/base/result.h"

namespace steelyard {

struct PlanRecord {
    AthleteLog log;
    Library library;
};

[[nodiscard]] Result<PlanRecord> readPlanRecord(const QString& bookPath, Id<Athlete> athlete, QDate asOf);

}  // namespace steelyard
