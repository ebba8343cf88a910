#include "core/planning/block_forecast.h"

#include <algorithm>

namespace steelyard {
namespace {

struct DayAhead {
    QDate date;
    std::size_t week = 0;
    std::size_t day = 0;
};

std::vector<DayAhead> daysAhead(const PlanningInput& input, const Block& block)
{
    std::vector<DayAhead> ahead;
    for (std::size_t week = 0; week < block.weeks.size(); ++week)
        for (std::size_t day = 0; day < block.weeks[week].days.size(); ++day) {
            const QDate date = block.weeks[week].days[day].date;
            const bool trained = std::ranges::binary_search(input.log.sessionDates, date);
            if (date >= input.today && !trained && !isDayOff(block, date)) ahead.push_back({date, week, day});
        }
    std::ranges::stable_sort(ahead, {}, &DayAhead::date);
    return ahead;
}

// As if the sets ended at their targets.
DoneExposure asIfDone(const SlotLoad& planned)
{
    DoneExposure done;
    for (const int reps : planned.targetReps) done.push_back({*planned.load, reps, false, planned.reserve});
    return done;
}

// What was planned for each lift between today and the day that is looked at.
class PlannedSoFar {
public:
    [[nodiscard]] std::span<const DoneExposure> of(const LiftLine& lift) const
    {
        const auto found = std::ranges::find(m_lifts, lift, &Entry::first);
        return found == m_lifts.end() ? std::span<const DoneExposure>() : std::span<const DoneExposure>(found->second);
    }
    void add(const LiftLine& lift, DoneExposure done)
    {
        auto found = std::ranges::find(m_lifts, lift, &Entry::first);
        if (found == m_lifts.end()) found = m_lifts.insert(m_lifts.end(), {lift, {}});
        found->second.push_back(std::move(done));
    }

private:
    using Entry = std::pair<LiftLine, std::vector<DoneExposure>>;
    std::vector<Entry> m_lifts;
};

std::optional<Decimal> reserveOf(const SlotLoad& planned)
{
    return planned.reserve ? std::optional(Decimal::nearest(*planned.reserve, 1)) : std::nullopt;
}

}  // namespace

const SlotForecast* BlockForecast::at(const PlanPlace& place) const
{
    const auto found = std::ranges::find(slotList, place, &SlotForecast::place);
    return found == slotList.end() ? nullptr : &*found;
}

PlannedPlace plannedPlace(const Block& block, const PlanPlace& place)
{
    const Slot& slot = block.weeks[place.week].days[place.day].slotList[place.slot];
    PlannedPlace out;
    if (slot.plannedRir) out.reserve = slot.plannedRir->toDouble();
    const LiftLine lift = liftOf(block, slot);
    for (std::size_t week = 0; week < block.weeks.size(); ++week) {
        if (block.weeks[week].kind != WeekKind::Normal) continue;
        if (week > place.week) ++out.weeksToGo;
        for (const PlannedDay& day : block.weeks[week].days)
            for (const Slot& other : day.slotList)
                out.differs = out.differs || (liftOf(block, other) == lift && other.plannedRir != slot.plannedRir);
    }
    return out;
}

BlockForecast forecastBlock(const PlanningInput& input, const Block& block)
{
    BlockForecast forecast;
    SlotLoads loads(input);
    PlannedSoFar soFar;
    for (const DayAhead& ahead : daysAhead(input, block)) {
        const PlannedWeek& week = block.weeks[ahead.week];
        const auto& slotsOfDay = week.days[ahead.day].slotList;
        for (std::size_t i = 0; i < slotsOfDay.size(); ++i) {
            const PlanPlace place{ahead.week, ahead.day, i};
            const LiftLine lift = liftOf(block, slotsOfDay[i]);
            SlotLoad planned = loads.plan(
                {slotsOfDay[i], ahead.date, week.kind, block.easing, plannedPlace(block, place), soFar.of(lift)});
            const bool counts = week.kind != WeekKind::Deload && planned.load && !planned.targetReps.empty();
            if (counts) soFar.add(lift, asIfDone(planned));
            forecast.slotList.push_back({place, ahead.date, std::move(planned)});
        }
    }
    return forecast;
}

std::vector<LoadChangeAhead> reforecast(const Block& before, const BlockForecast& after)
{
    std::vector<LoadChangeAhead> changes;
    for (const SlotForecast& one : after.slotList) {
        const Slot& slot = before.weeks[one.place.week].days[one.place.day].slotList[one.place.slot];
        if (slot.loadLocked || !one.load.load) continue;
        LoadChangeAhead change{one.place, one.date, slot, slot, one.load.why};
        if (!slot.load || slot.load->mass() != one.load.load->mass()) change.after.load = one.load.load;
        const auto reserve = reserveOf(one.load);
        const bool sameReserve = slot.plannedRir.has_value() == reserve.has_value()
                                 && (!reserve || slot.plannedRir->toDouble() == reserve->toDouble());
        if (!sameReserve) change.after.plannedRir = reserve;
        if (change.after != change.before) changes.push_back(std::move(change));
    }
    return changes;
}

Block withLoads(Block block, std::span<const LoadChangeAhead> accepted)
{
    for (const LoadChangeAhead& change : accepted) {
        if (change.place.week >= block.weeks.size()) continue;
        auto& days = block.weeks[change.place.week].days;
        if (change.place.day >= days.size() || days[change.place.day].date != change.date) continue;
        auto& slotsOfDay = days[change.place.day].slotList;
        if (change.place.slot < slotsOfDay.size() && slotsOfDay[change.place.slot] == change.before)
            slotsOfDay[change.place.slot] = change.after;
    }
    return block;
}

}  // namespace steelyard
