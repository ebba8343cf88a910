#include "core/planning/block_places.h"

#include <algorithm>

namespace steelyard {
namespace {

const PlannedDay* plannedDayAt(const Block& block, std::size_t week, std::size_t day)
{
    if (week >= block.weeks.size() || day >= block.weeks[week].days.size()) return nullptr;
    return &block.weeks[week].days[day];
}

void keepEachOnce(PlanPlaces& places)
{
    std::ranges::sort(places);
    const auto twice = std::ranges::unique(places);
    places.erase(twice.begin(), twice.end());
}

}  // namespace

const Slot* slotAt(const Block& block, const PlanPlace& place)
{
    const PlannedDay* day = plannedDayAt(block, place.week, place.day);
    return day && place.slot < day->slotList.size() ? &day->slotList[place.slot] : nullptr;
}

Slot* slotAt(Block& block, const PlanPlace& place)
{
    if (!slotAt(std::as_const(block), place)) return nullptr;
    return &block.weeks[place.week].days[place.day].slotList[place.slot];
}

QDate dateOf(const Block& block, const PlanPlace& place)
{
    const PlannedDay* day = plannedDayAt(block, place.week, place.day);
    return day ? day->date : QDate();
}

QDate firstDayOf(const Block& block, std::size_t week)
{
    return block.start.addDays(kDaysOfPlanWeek * static_cast<qint64>(week));
}

QDate endOf(const Block& block)
{
    return firstDayOf(block, block.weeks.size());
}

std::optional<DayPlace> dayOn(const Block& block, QDate date)
{
    for (std::size_t week = 0; week < block.weeks.size(); ++week)
        for (std::size_t day = 0; day < block.weeks[week].days.size(); ++day)
            if (block.weeks[week].days[day].date == date) return DayPlace{week, day};
    return std::nullopt;
}

bool isLaidOutWell(const Block& block)
{
    for (std::size_t week = 0; week < block.weeks.size(); ++week) {
        QDate before = firstDayOf(block, week).addDays(-1);
        for (const PlannedDay& day : block.weeks[week].days) {
            if (!day.date.isValid() || day.date <= before) return false;
            before = day.date;
        }
        if (before >= firstDayOf(block, week + 1)) return false;
    }
    return true;
}

LiftLine liftOf(const Block& block, const Slot& slot)
{
    return {block.athlete, slot.variant, slot.grip, slot.standard};
}

bool isSameLift(const Slot& a, const Slot& b)
{
    return a.variant == b.variant && a.grip == b.grip && a.standard == b.standard;
}

std::optional<PlanPlace> placeOf(const Block& block, QDate date, const Slot& lift)
{
    const auto day = dayOn(block, date);
    if (!day) return std::nullopt;
    const auto& slotList = block.weeks[day->week].days[day->day].slotList;
    const auto found = std::ranges::find_if(slotList, [&](const Slot& slot) { return isSameLift(slot, lift); });
    if (found == slotList.end()) return std::nullopt;
    return PlanPlace{day->week, day->day, static_cast<std::size_t>(found - slotList.begin())};
}

PlanPlaces withLaterWeeks(const Block& block, const PlanPlaces& places, WeekScope scope, bool normalOnly)
{
    PlanPlaces all;
    for (const PlanPlace& place : places) {
        const Slot* slot = slotAt(block, place);
        if (!slot) continue;
        all.push_back(place);
        for (std::size_t week = place.week + 1; scope == WeekScope::ThisAndLater && week < block.weeks.size(); ++week) {
            if (normalOnly && block.weeks[week].kind != WeekKind::Normal) continue;
            const qint64 days = kDaysOfPlanWeek * static_cast<qint64>(week - place.week);
            if (const auto later = placeOf(block, dateOf(block, place).addDays(days), *slot)) all.push_back(*later);
        }
    }
    keepEachOnce(all);
    return all;
}

PlanPlaces placesOf(const Block& block, const LiftLine& lift, std::size_t fromWeek)
{
    PlanPlaces places;
    for (std::size_t week = fromWeek; week < block.weeks.size(); ++week)
        for (const PlanPlace& place : placesOfWeek(block, week))
            if (liftOf(block, *slotAt(block, place)) == lift) places.push_back(place);
    return places;
}

PlanPlaces placesOfWeek(const Block& block, std::size_t week)
{
    PlanPlaces places;
    if (week >= block.weeks.size()) return places;
    const auto& days = block.weeks[week].days;
    for (std::size_t day = 0; day < days.size(); ++day)
        for (std::size_t slot = 0; slot < days[day].slotList.size(); ++slot) places.push_back({week, day, slot});
    return places;
}

}  // namespace steelyard
