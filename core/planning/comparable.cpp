#include "core/planning/comparable.h"

#include <algorithm>

namespace steelyard {

const LineRecord* lineOf(const AthleteLog& log, const Slot& slot)
{
    const auto found = std::ranges::find_if(log.lines, [&](const LineRecord& line) {
        return line.variant.id == slot.variant && line.grip.id == slot.grip && line.standard.id == slot.standard;
    });
    return found == log.lines.end() ? nullptr : &*found;
}

std::vector<Exposure> comparableBefore(const LineRecord& line, QDate date)
{
    std::vector<Exposure> before;
    for (const Exposure& exposure : line.exposures) {
        if (exposure.date >= date) continue;
        Exposure kept{exposure.date, {}, exposure.rating};
        std::ranges::copy_if(exposure.sets, std::back_inserter(kept.sets), [](const LoggedSet& logged) {
            return logged.set.kind == SetKind::Work && (logged.set.countedReps() > 0 || logged.set.failed);
        });
        const bool counted =
            std::ranges::any_of(kept.sets, [](const LoggedSet& logged) { return logged.set.countedReps() > 0; });
        if (counted) before.push_back(std::move(kept));
    }
    std::ranges::stable_sort(before, {}, &Exposure::date);
    return before;
}

DoneExposure doneSets(const Exposure& exposure)
{
    DoneExposure done;
    for (const LoggedSet& logged : exposure.sets) {
        const SetEntry& set = logged.set;
        done.push_back(
            {set.load, set.countedReps(), set.failed, set.effort ? set.effort->repsInReserve() : std::nullopt});
    }
    return done;
}

}  // namespace steelyard
