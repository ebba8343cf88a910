#include "core/planning/block_ops.h"

#include "core/planning/block_layout.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <utility>

namespace steelyard {
namespace {

struct BlockOpText {
    Q_DECLARE_TR_FUNCTIONS(BlockOpText)
};

bool standsTwice(const PlannedDay& day)
{
    for (std::size_t i = 0; i < day.slotList.size(); ++i)
        for (std::size_t j = i + 1; j < day.slotList.size(); ++j)
            if (isSameLift(day.slotList[i], day.slotList[j])) return true;
    return false;
}

int repeatedLifts(const Block& block)
{
    int days = 0;
    for (const PlannedWeek& week : block.weeks) days += static_cast<int>(std::ranges::count_if(week.days, standsTwice));
    return days;
}

// Into the day, before the slot of that number; the order of those that come stays.
void putInto(PlannedDay& day, std::vector<Slot> coming, std::optional<std::size_t> before)
{
    for (Slot& slot : coming) slot.superset = 0;  // numbers belong to the day they came from
    const std::size_t at = std::min(before.value_or(day.slotList.size()), day.slotList.size());
    day.slotList.insert(day.slotList.begin() + static_cast<std::ptrdiff_t>(at), coming.begin(), coming.end());
}

// What goes from where to which date, in the order of the plan; the dates as they are before anything moves.
struct Carried {
    QDate from;
    QDate to;
    std::vector<Slot> lifts;
};

std::vector<Carried> carriedBy(const Block& block, PlanPlaces places, int days)
{
    std::ranges::sort(places);
    std::vector<Carried> all;
    for (const PlanPlace& place : places) {
        const Slot* slot = slotAt(block, place);
        if (!slot) continue;
        const QDate from = dateOf(block, place);
        if (all.empty() || all.back().from != from) all.push_back({from, from.addDays(days), {}});
        all.back().lifts.push_back(*slot);
    }
    return all;
}

// From the back, so that the places before stay what they are.
void takeOut(Block& block, PlanPlaces places)
{
    std::ranges::sort(places, std::ranges::greater());
    const auto twice = std::ranges::unique(places);
    places.erase(twice.begin(), twice.end());
    for (const PlanPlace& place : places) {
        if (!slotAt(block, place)) continue;
        PlannedDay& day = block.weeks[place.week].days[place.day];
        day.slotList.erase(day.slotList.begin() + static_cast<std::ptrdiff_t>(place.slot));
        tidySupersets(day);
    }
}

void dropEmptied(Block& block, const std::vector<Carried>& carried)
{
    for (const Carried& one : carried)
        if (const auto at = dayOn(block, one.from)) {
            auto& days = block.weeks[at->week].days;
            const PlannedDay& day = days[at->day];
            if (day.slotList.empty() && day.title.isEmpty())
                days.erase(days.begin() + static_cast<std::ptrdiff_t>(at->day));
        }
}

bool stepPlace(Block& block, const PlanPlace& place, int by)
{
    if (!slotAt(block, place)) return false;
    auto& slotList = block.weeks[place.week].days[place.day].slotList;
    if (by < 0 ? place.slot == 0 : place.slot + 1 >= slotList.size()) return false;
    std::swap(slotList[place.slot], slotList[by < 0 ? place.slot - 1 : place.slot + 1]);
    return true;
}

}  // namespace

Result<Block> changedBlock(const Block& before, Block after, const QString& nothing)
{
    if (after == before) return fail(ErrorCode::Invalid, nothing);
    if (repeatedLifts(after) > repeatedLifts(before))
        return fail(ErrorCode::Invalid,
                    BlockOpText::tr("The same lift stands on that day already: once a day, with more sets there."));
    const Problems problems = validate(after);
    if (!problems.empty() && validate(before).empty())
        return fail(ErrorCode::Invalid, problems.front().text, problems.front().field);
    return after;
}

void sortDays(PlannedWeek& week)
{
    std::ranges::stable_sort(week.days, {}, &PlannedDay::date);
}

void tidySupersets(PlannedDay& day)
{
    for (Slot& slot : day.slotList)
        if (slot.superset > 0 && std::ranges::count(day.slotList, slot.superset, &Slot::superset) == 1)
            slot.superset = 0;
}

Result<PlannedDay*> openDay(Block& block, QDate date)
{
    const auto week = weekOfBlock(block, date);
    if (!week) return fail(ErrorCode::Invalid, BlockOpText::tr("That day lies outside the block."));
    if (isDayOff(block, date)) return fail(ErrorCode::Invalid, BlockOpText::tr("That day is a day off."));
    auto& days = block.weeks[*week].days;
    if (std::ranges::find(days, date, &PlannedDay::date) == days.end()) {
        days.push_back({date, {}, {}});
        sortDays(block.weeks[*week]);
    }
    return &*std::ranges::find(days, date, &PlannedDay::date);
}

Result<Block> keepingPast(const Block& before, Result<Block> after, QDate firstOpen)
{
    if (!after) return after;
    const auto past = [&](const Block& block) {
        std::vector<std::pair<WeekKind, PlannedDay>> days;
        for (const PlannedWeek& week : block.weeks)
            for (const PlannedDay& day : week.days)
                if (day.date < firstOpen) days.emplace_back(week.kind, day);
        return days;
    };
    const auto passed = past(before);
    if (past(*after) == passed && (passed.empty() || after->start == before.start)) return after;
    return fail(ErrorCode::Invalid, BlockOpText::tr("Days that have passed stay as they were planned."));
}

Result<Block> addSlots(Block block, const std::vector<Slot>& coming, QDate day, std::optional<std::size_t> before)
{
    const Block was = block;
    STEELYARD_TRY(PlannedDay* const open, openDay(block, day));
    putInto(*open, coming, before);
    return changedBlock(was, std::move(block), BlockOpText::tr("There is nothing to put there."));
}

Result<Block> addSlotsWeekly(Block block, const std::vector<Slot>& coming, QDate day, std::optional<std::size_t> before)
{
    STEELYARD_TRY(block, addSlots(std::move(block), coming, day, before));
    const auto first = weekOfBlock(block, day);
    for (std::size_t week = *first + 1; week < block.weeks.size(); ++week) {
        const QDate date = day.addDays(kDaysOfPlanWeek * static_cast<qint64>(week - *first));
        std::vector<Slot> there;
        for (const Slot& slot : coming)
            if (!placeOf(block, date, slot))
                there.push_back(block.weeks[week].kind == WeekKind::Deload ? easedSlot(slot, block.easing) : slot);
        if (there.empty() || isDayOff(block, date)) continue;
        STEELYARD_TRY(PlannedDay* const open, openDay(block, date));
        putInto(*open, std::move(there), before);
    }
    return block;
}

Result<Block> removeSlots(Block block, const PlanPlaces& places)
{
    const Block was = block;
    takeOut(block, places);
    return changedBlock(was, std::move(block), BlockOpText::tr("Nothing is chosen to take out."));
}

Result<Block> moveSlots(Block block, const PlanPlaces& places, int days, std::optional<std::size_t> before)
{
    const Block was = block;
    const auto carried = carriedBy(block, places, days);
    // Within a day: those that go leave a gap before the place they go to.
    if (days == 0 && before && !places.empty())
        *before -= static_cast<std::size_t>(std::ranges::count_if(places, [&](const PlanPlace& place) {
            return place.week == places.front().week && place.day == places.front().day && place.slot < *before;
        }));
    takeOut(block, places);
    for (const Carried& one : carried) {
        STEELYARD_TRY(PlannedDay* const open, openDay(block, one.to));
        putInto(*open, one.lifts, before);
    }
    dropEmptied(block, carried);
    return changedBlock(was, std::move(block), BlockOpText::tr("It stands there already."));
}

Result<Block> copySlots(Block block, const PlanPlaces& places, int days, std::optional<std::size_t> before)
{
    const Block was = block;
    for (const Carried& one : carriedBy(block, places, days)) {
        STEELYARD_TRY(PlannedDay* const open, openDay(block, one.to));
        putInto(*open, one.lifts, before);
    }
    return changedBlock(was, std::move(block), BlockOpText::tr("Nothing is chosen to copy."));
}

Result<Block> stepSlots(Block block, const PlanPlaces& places, int by)
{
    const Block was = block;
    PlanPlaces order = places;
    std::ranges::sort(order);
    if (by > 0) std::ranges::reverse(order);
    // At the edge the first stays, and those behind it don't overtake.
    std::optional<PlanPlace> stuck;
    for (const PlanPlace& place : order) {
        const bool blocked = stuck && stuck->week == place.week && stuck->day == place.day
                             && place.slot == (by < 0 ? stuck->slot + 1 : stuck->slot - 1);
        if (blocked || !stepPlace(block, place, by)) stuck = place;
    }
    return changedBlock(was, std::move(block), BlockOpText::tr("It stands at the edge of its day."));
}

Result<Block> replaceLift(Block block, const PlanPlaces& places, const LiftLine& to)
{
    const Block was = block;
    for (const PlanPlace& place : places) {
        Slot* slot = slotAt(block, place);
        if (!slot || liftOf(block, *slot) == to) continue;
        slot->variant = to.variant;
        slot->grip = to.grip;
        slot->standard = to.standard;
        slot->load.reset();
        slot->loadLocked = false;
    }
    return changedBlock(was, std::move(block), BlockOpText::tr("It is that lift already."));
}

Result<Block> replaceLiftFrom(Block block, const LiftLine& from, const LiftLine& to, std::size_t fromWeek)
{
    const PlanPlaces places = placesOf(block, from, fromWeek);
    return replaceLift(std::move(block), places, to);
}

}  // namespace steelyard
