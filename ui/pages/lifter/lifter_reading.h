// One lifter's whole record with every line read: the work of the Lifter page's background job.
//
//   jobs.run(this, title, [=](const Progress& p) { return readLifter(path, athlete, today, p); }, show);
//
// readings[i] belongs to log.lines[i]. Reads through a connection of its own. Fails with Cancelled, NotFound, Storage.
#pragma once

#include "core/analysis/line_reading.h"
#include "core/base/progress.h"

namespace steelyard {

struct LifterReading {
    AthleteLog log;
    std::vector<LineReading> readings;
};

[[nodiscard]] Result<LifterReading> readLifter(const QString& bookPath, Id<Athlete> athlete, QDate asOf,
                                               const Progress& progress);
// The same from a record that is at hand.
[[nodiscard]] Result<LifterReading> readLines(AthleteLog log, QDate asOf, const Progress& progress);

}  // namespace steelyard
