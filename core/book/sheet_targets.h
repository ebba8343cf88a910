// What a sheet aims at, from the record up to the day before: at a load that stands in the plan the repetitions that are likely
// on that day; for a slot without one the load and the repetitions that its rule and the forecast give.
//
//   STEELYARD_TRY(auto targets, SheetTargets::read(database, library, gyms, date));
//   const auto sheet = buildSessionSheet(log, library, equipment, date, targets.readingFor(log, date));
//   sheet->exercises[0].target.reps == {9, 9, 8};   sheet->exercises[0].target.why  // names the chance
//
// Of a day that isn't planned only the coach's numbers are given: there the rule's plain next step is the target. Days of one lifter are best asked in their order, because the reading goes on from day to day.
// Failures: Storage. The library and the gyms outlive it. Not for several threads at once.
#pragma once

#include "core/analysis/reading_parameters.h"
#include "core/analysis/verdict_thresholds.h"
#include "core/planning/slot_load.h"
#include "core/sheets/session_sheet.h"
#include "core/storage/database.h"

namespace steelyard {

class SheetTargets {
public:
    [[nodiscard]] static Result<SheetTargets> read(Database&, const Library&, std::span<const Row<Gym>>, QDate asOf);

    [[nodiscard]] SheetReading readingFor(const AthleteLog& log, QDate date);

private:
    struct Numbers {
        ReadingParameters parameters;
        VerdictThresholds thresholds;
        RuleSettings settings;
    };
    struct Read {
        Id<Athlete> athlete;
        QDate until;
        LifterTracker tracker;
    };

    SheetTargets(const Library& library, std::span<const Row<Gym>> gyms, std::unique_ptr<const Numbers> numbers)
        : m_library(&library), m_gyms(gyms), m_numbers(std::move(numbers))
    {}
    [[nodiscard]] const LifterTracker& trackerOf(const AthleteLog& log, QDate until);

    const Library* m_library;
    std::span<const Row<Gym>> m_gyms;
    std::unique_ptr<const Numbers> m_numbers;  // trackers point into it
    std::optional<Read> m_read;                // the lifter that was asked about last
};

}  // namespace steelyard
