// One lifter's whole record with every line read: the work of the Lifter page's background job.
//
//   jobs.run(this, title, [=](const Progress& p) { return readLifter(path, athlete, today, p); }, show);
//
// readings[i] belongs to log.lines[i], read by the book's numbers and the thresholds the coach set, as the review reads
// them, with its course. Reads through a connection of its own. Fails with Cancelled, NotFound, Storage.
#pragma once

#include "core/analysis/line_curve.h"
#include "core/analysis/line_explanation.h"
#include "core/analysis/regime_engine.h"
#include "core/base/progress.h"
#include "core/domain/repetition.h"
#include "core/domain/rule_settings.h"

#include <memory>

namespace steelyard {

struct LifterReading {
    AthleteLog log;
    std::shared_ptr<const RegimeEngine> engine;
    LifterTracker state;  // on that day; rests on the engine
    std::vector<LineReading> readings;
    QDate asOf;
    std::vector<SetRepetitions> repetitions = {};  // of every line, by set
};

[[nodiscard]] Result<LifterReading> readLifter(const QString& bookPath, Id<Athlete> athlete, QDate asOf,
                                               const Progress& progress);
// The sets behind one of the readings.
[[nodiscard]] LineExplanation explainLineOf(const LifterReading& lifter, std::size_t line);
// The weeks to come of one of the lines: some milliseconds.
[[nodiscard]] std::vector<CapacityAhead> aheadOf(const LifterReading& lifter, std::size_t line);
// Repetitions against load on one of the lines.
[[nodiscard]] std::optional<LineCurve> curveOf(const LifterReading& lifter, std::size_t line);
// The same from a record, numbers and settings that are at hand.
[[nodiscard]] Result<LifterReading> readLines(AthleteLog log, const ReadingParameters& parameters,
                                              const RuleSettings& settings, QDate asOf, const Progress& progress);

}  // namespace steelyard
