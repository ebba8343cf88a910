#include "ui/pages/block/block_pins.h"

#include <algorithm>

namespace steelyard {
namespace {

const Slot* slotOnWeekday(const Block& block, std::size_t week, int weekday, const LiftLine& lift)
{
    for (const PlannedDay& day : block.weeks[week].days)
        if (day.date.dayOfWeek() == weekday)
            for (const Slot& slot : day.slotList)
                if (liftOf(block, slot) == lift) return &slot;
    return nullptr;
}

// A superset needs two slots; what is left of one alone is none.
void dropLonelySupersets(std::vector<PinnedSlot>& pinned)
{
    for (PinnedSlot& pin : pinned) {
        const auto isPartner = [&](const PinnedSlot& other) {
            return other.weekday == pin.weekday && other.slot.superset == pin.slot.superset;
        };
        if (std::ranges::count_if(pinned, isPartner) < 2) pin.slot.superset = 0;
    }
}

}  // namespace

BlockPins::Pin BlockPins::pinOf(const Block& block, const PlanPlace& place)
{
    return {dateOf(block, place).dayOfWeek(), liftOf(block, *slotAt(block, place))};
}

bool BlockPins::has(const Block& block, const PlanPlace& place) const
{
    return !m_pins.empty() && slotAt(block, place) && std::ranges::find(m_pins, pinOf(block, place)) != m_pins.end();
}

bool BlockPins::toggle(const Block& block, const PlanPlaces& places)
{
    const bool fixed = std::ranges::all_of(places, [&](const PlanPlace& place) { return has(block, place); });
    for (const PlanPlace& place : places) {
        const Pin pin = pinOf(block, place);
        std::erase(m_pins, pin);
        if (!fixed) m_pins.push_back(pin);
    }
    return !fixed;
}

const Slot* BlockPins::doseOf(const Block& block, const Pin& pin, std::size_t week)
{
    std::vector<std::size_t> order;
    if (week < block.weeks.size() && block.weeks[week].kind == WeekKind::Normal) order.push_back(week);
    for (const bool normal : {true, false})
        for (std::size_t i = 0; i < block.weeks.size(); ++i)
            if ((block.weeks[i].kind == WeekKind::Normal) == normal) order.push_back(i);
    for (const std::size_t one : order)
        if (const Slot* slot = slotOnWeekday(block, one, pin.weekday, pin.lift)) return slot;
    return nullptr;
}

std::vector<PinnedSlot> BlockPins::slotsOf(const Block& block, std::size_t week) const
{
    std::vector<PinnedSlot> pinned;
    for (const Pin& pin : m_pins)
        if (const Slot* slot = doseOf(block, pin, week)) {
            pinned.push_back({pin.weekday, *slot});
            if (!slot->loadLocked) pinned.back().slot.load.reset();
        }
    std::ranges::stable_sort(pinned, {}, &PinnedSlot::weekday);
    dropLonelySupersets(pinned);
    return pinned;
}

}  // namespace steelyard
