// A progress chart's content from a record and a reading made for the test, in kilograms and the C locale.
//
//   ProgressCase c;
//   c.session(QDate(2026, 3, 2), {{.load = 40, .reps = 8, .off = 0, .rir = 1}}, 50);
//   const ProgressSpec spec = c.build();
#pragma once

#include "core/analysis/counting.h"
#include "tests/support/log_builder.h"
#include "ui/charts/progress_spec.h"

namespace steelyard::testing_support {

struct ProgressCase {
    LogBuilder log;
    LineReading reading;
    std::vector<Row<Block>> blocks;
    std::vector<Row<Decision>> decisions;
    std::vector<CapacityAhead> ahead;
    ProgressOptions options{QLocale::c()};
    QStringList notes;  // of the first set, by session

    ProgressCase() { log.line(QStringLiteral("Arm curl")); }

    // The best set is the first.
    void session(QDate date, const std::vector<MadeSet>& sets, std::optional<double> capacity = {})
    {
        log.exposure(date, sets);
        ReadingPoint point;
        point.date = date;
        const SetEntry best = madeEntry(sets.front());
        point.topLoad = best.load;
        point.countedReps = best.countedReps();
        point.workSets = static_cast<int>(sets.size());
        point.reps = best.reps;
        point.watched = best.watched();
        point.deload = best.kind == SetKind::Deload;
        point.capacityKg = capacity;
        reading.points.push_back(point);
    }
    [[nodiscard]] ProgressSpec build()
    {
        AthleteLog made = log.build();
        LineRecord& record = made.lines.front();
        for (qsizetype i = 0; i < notes.size(); ++i)
            record.exposures[static_cast<std::size_t>(i)].sets.front().set.note = notes[i];
        return buildProgressSpec(
            {reading, blocks, decisions, record.id, QStringLiteral("Arm curl"), &record, nullptr, ahead}, options);
    }
};

}  // namespace steelyard::testing_support
