// A block's loads from the lifter's record: for every day that is left, and what changed since they were last written.
//
//   const BlockForecast forecast = forecastBlock(input, block);
//   const std::vector<LoadChangeAhead> changes = reforecast(block, forecast);
//   const Block rewritten = withLoads(block, changes);      // those that the coach accepts
//
// Days are gone through in their order. Each day takes the days before it as done to their targets, so a load rises through the
// block as its rule says; the forecast of its own day widens with the weeks. What is over, what was trained already, and days
// within a holiday are left out. An easier week asks nothing of the weeks after it.
//
// Pure. Failures: none.
#pragma once

#include "core/planning/block_places.h"
#include "core/planning/slot_load.h"

namespace steelyard {

struct SlotForecast {
    PlanPlace place;
    QDate date;
    SlotLoad load;
    friend bool operator==(const SlotForecast&, const SlotForecast&) = default;
};

struct BlockForecast {
    std::vector<SlotForecast> slotList;  // by date, then by place in the day

    [[nodiscard]] const SlotForecast* at(const PlanPlace& place) const;  // null: not among the days that are left
};

[[nodiscard]] BlockForecast forecastBlock(const PlanningInput& input, const Block& block);

struct LoadChangeAhead {
    PlanPlace place;
    QDate date;
    Slot before;
    Slot after;   // load, and reserve where the slot's rule plans it
    QString why;  // for people
    friend bool operator==(const LoadChangeAhead&, const LoadChangeAhead&) = default;
};

// The slots whose load or reserve would be written otherwise now. Locked slots and those that nothing can be said of are not
// among them.
[[nodiscard]] std::vector<LoadChangeAhead> reforecast(const Block& before, const BlockForecast& after);
// The block with these changes; a change whose slot isn't there as it was before is passed over.
[[nodiscard]] Block withLoads(Block block, std::span<const LoadChangeAhead> accepted);

// The reserve that the slot's rule plans from, and where the slot stands.
[[nodiscard]] PlannedPlace plannedPlace(const Block& block, const PlanPlace& place);

}  // namespace steelyard
