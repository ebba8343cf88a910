#include "core/analysis/planned_hold.h"

#include <algorithm>

namespace steelyard {
namespace {

// What a week asks of the line, slot by slot.
std::vector<const Slot*> slotsFor(const LiftLine& line, const PlannedWeek& week)
{
    std::vector<const Slot*> found;
    for (const PlannedDay& day : week.days)
        for (const Slot& slot : day.slotList)
            if (slot.variant == line.variant && slot.grip == line.grip && slot.standard == line.standard)
                found.push_back(&slot);
    return found;
}

bool leavesNoRoom(const Slot* slot)
{
    return slot->load && slot->band.high - slot->band.low <= kHoldBand;
}

bool asksTheSame(const Slot* a, const Slot* b)
{
    return a->load->mass() == b->load->mass() && a->sets == b->sets && a->band == b->band
           && a->plannedRir == b->plannedRir;
}

bool staysTheSame(const LiftLine& line, const PlannedWeek& a, const PlannedWeek& b)
{
    if (a.kind != WeekKind::Normal || b.kind != WeekKind::Normal) return false;
    const auto first = slotsFor(line, a);
    const auto second = slotsFor(line, b);
    return !first.empty() && std::ranges::all_of(first, leavesNoRoom) && std::ranges::all_of(second, leavesNoRoom)
           && std::ranges::equal(first, second, asksTheSame);
}

bool holdsInWeek(const LiftLine& line, const std::vector<PlannedWeek>& weeks, std::size_t at)
{
    return weeks[at].kind == WeekKind::Test || (at > 0 && staysTheSame(line, weeks[at - 1], weeks[at]))
           || (at + 1 < weeks.size() && staysTheSame(line, weeks[at], weeks[at + 1]));
}

}  // namespace

bool isHoldPlanned(const LiftLine& line, const std::vector<Row<Block>>& blocks, QDate day)
{
    return std::ranges::any_of(blocks, [&](const Row<Block>& row) {
        const auto week = weekOfBlock(row.value, day);
        return week && holdsInWeek(line, row.value.weeks, *week);
    });
}

}  // namespace steelyard
