// The same line across lifters: everybody in the book who trains this variant with this grip to this rep standard, each with the
// course of their capacity, read like the Lifter page reads it.
//
//   jobs.run(this, title, [=](const Progress& p) { return readSameLine(path, line, today, p); }, show);
//
// By name; archived lifters are left out. Reads through connections of its own. Fails with Cancelled, Storage.
#pragma once

#include "ui/charts/compare_spec.h"
#include "ui/pages/lifter/lifter_reading.h"

namespace steelyard {

struct LifterOnLine {
    Id<Athlete> athlete;
    ComparedLine compared;  // under the lifter's name
};

[[nodiscard]] Result<std::vector<LifterOnLine>> readSameLine(const QString& bookPath, const LiftLine& line, QDate asOf,
                                                             const Progress& progress);

}  // namespace steelyard
