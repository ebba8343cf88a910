// A lifter of sheet_samples.h with a record on the curl and what planning needs to look at it.
//
//   PlanningSample sample;
//   sample.steady(sample.curl, u"40", 10, 16);      // sixteen weeks of three sets, ten repetitions with two in reserve
//   SlotLoads loads(sample.input());
#pragma once

#include "core/planning/block_forecast.h"
#include "tests/support/sheet_samples.h"

namespace steelyard::testing_support {

struct PlanningSample : SheetSample {
    QDate today{2027, 3, 8};  // a Monday

    // One session a week, the last one a week before today.
    void steady(std::size_t line, QStringView load, int reps, int weeks)
    {
        for (int week = weeks; week >= 1; --week)
            done(line, today.addDays(-7 * week), {{load, reps}, {load, reps}, {load, reps - 1}});
    }
    [[nodiscard]] Slot slotOf(std::size_t line, RepBand band = {8, 12}) const
    {
        const LiftLine& lift = log.lines[line].line;
        Slot slot{lift.variant, lift.grip, lift.standard};
        slot.band = band;
        slot.plannedRir = Decimal::parse(u"2");
        return slot;
    }
    // Weeks of one day with these slots, Mondays from today on; the last one easier where it is to be.
    [[nodiscard]] Block blockOf(const std::vector<Slot>& slotList, int weeks, bool lastEasier = false) const
    {
        Block block{log.athlete.id, QStringLiteral("Spring"), {}, today, {}};
        for (int week = 0; week < weeks; ++week)
            block.weeks.push_back({lastEasier && week + 1 == weeks ? WeekKind::Deload : WeekKind::Normal,
                                   {{today.addDays(7 * week), {}, slotList}}});
        return block;
    }
    // The state is kept until the next call.
    [[nodiscard]] PlanningInput input(const RuleSettings& settings = {})
    {
        tracker.emplace(parameters, thresholds, log.athlete.value.experience);
        tracker->advance(log, countLines(log, today), today);
        return {log, library, &gym, *tracker, today, settings};
    }

    ReadingParameters parameters;
    VerdictThresholds thresholds;
    std::optional<LifterTracker> tracker;
};

}  // namespace steelyard::testing_support
