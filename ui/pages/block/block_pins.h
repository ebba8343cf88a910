// What the coach has fixed for the next proposal: lifts on weekdays. They belong to no block, because the proposal is another one;
// their doses are those of the block that they are taken from.
//
//   pins.toggle(block, chosen);   pins.has(block, place);
//   wishes.pinned = pins.slotsOf(block, weekInSight)
//
// The dose is that of the week in sight where it is a normal one and has the lift, else of the first normal week that has it. A
// load stays only where the coach has locked it; a superset only with all its slots. Pure; no failures.
#pragma once

#include "core/planning/block_places.h"
#include "core/planning/propose_block.h"

namespace steelyard {

class BlockPins {
public:
    [[nodiscard]] bool has(const Block&, const PlanPlace&) const;
    // Fixes them all; where all are fixed already, none of them any longer. True: they are fixed now.
    bool toggle(const Block&, const PlanPlaces&);
    // Those that the block has, by weekday.
    [[nodiscard]] std::vector<PinnedSlot> slotsOf(const Block&, std::size_t week) const;

private:
    struct Pin {
        int weekday = 1;
        LiftLine lift;
        friend bool operator==(const Pin&, const Pin&) = default;
    };
    [[nodiscard]] static Pin pinOf(const Block&, const PlanPlace&);
    [[nodiscard]] static const Slot* doseOf(const Block&, const Pin&, std::size_t week);

    std::vector<Pin> m_pins;
};

}  // namespace steelyard
