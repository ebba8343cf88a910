#include "core/planning/session_time.h"

#include <algorithm>
#include <map>

namespace steelyard {
namespace {

constexpr double kSecondsOfAMinute = 60;

// Lifts done in turns; a lift by itself is a group of one.
double secondsOf(const std::vector<const Slot*>& group, const Library& library)
{
    int rounds = 0;
    int rest = 0;
    double work = 0;
    for (const Slot* slot : group) {
        rounds = std::max(rounds, slot->sets);
        rest = std::max(rest, restSecondsOf(*slot));
        work += slot->sets * setSecondsOf(*slot, library);
        if (group.size() > 1) work += slot->sets * kTurnSeconds;
    }
    return work + std::max(0, rounds - 1) * rest + static_cast<double>(group.size()) * kSetUpSeconds;
}

}  // namespace

int restSecondsOf(const Slot& slot)
{
    if (slot.restSeconds) return *slot.restSeconds;
    const auto usual =
        std::ranges::find_if(kUsualRests, [&](const UsualRest& row) { return slot.band.high <= row.bandHighUpTo; });
    return usual == kUsualRests.end() ? kUsualRests.back().seconds : usual->seconds;
}

double setSecondsOf(const Slot& slot, const Library& library)
{
    const auto* variant = library.find(slot.variant);
    const int sides = variant && variant->value.sides == Sides::OneAtATime ? 2 : 1;
    return (slot.band.low + slot.band.high) / 2.0 * kRepSeconds * sides;
}

double minutesOf(const PlannedDay& day, const Library& library)
{
    double seconds = 0;
    std::map<int, std::vector<const Slot*>> groups;
    for (const Slot& slot : day.slotList) {
        if (slot.superset > 0)
            groups[slot.superset].push_back(&slot);
        else
            seconds += secondsOf({&slot}, library);
    }
    for (const auto& [number, group] : groups) seconds += secondsOf(group, library);
    return seconds / kSecondsOfAMinute;
}

}  // namespace steelyard
