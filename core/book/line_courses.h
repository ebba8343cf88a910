// How the lines of some lifters went: what was known of the capacity after each of the last sessions, for the small pictures of a
// roster. A review has today's numbers alone (analysis/regime_engine.h, ReadingDepth); this reads the way to them.
//
//   STEELYARD_TRY(const auto courses, readCourses(*database, athletes, {asOf, 24}, progress));
//   courses.at(athlete).at(line)                                     // TrendPoints, oldest first
//
// A line without a course has no entry; neither has a lifter who is gone. Failures: Storage, Cancelled.
#pragma once

#include "core/analysis/line_reading.h"
#include "core/base/progress.h"
#include "core/storage/database.h"

#include <map>
#include <span>

namespace steelyard {

using LineCourses = std::map<Id<LiftLine>, std::vector<TrendPoint>>;

struct CourseWish {
    QDate asOf;
    std::size_t most = 24;  // sessions of each line, the last ones
};

[[nodiscard]] Result<std::map<Id<Athlete>, LineCourses>> readCourses(Database&, std::span<const Id<Athlete>>,
                                                                     const CourseWish&, const Progress&);

}  // namespace steelyard
