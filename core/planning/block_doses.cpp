#include "core/planning/block_layout.h"
#include "core/planning/block_ops.h"

#include "core/base/text.h"
#include "core/planning/replan.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>

namespace steelyard {
namespace {

struct BlockDoseText {
    Q_DECLARE_TR_FUNCTIONS(BlockDoseText)
};

template <class Change>
Result<Block> changeEach(Block block, const PlanPlaces& places, const QString& nothing, const Change& change)
{
    const Block was = block;
    for (const PlanPlace& place : places)
        if (Slot* slot = slotAt(block, place)) change(*slot);
    return changedBlock(was, std::move(block), nothing);
}

QString soAlready()
{
    return BlockDoseText::tr("It is so already.");
}

void takeLoad(Slot& slot, const std::optional<Load>& load)
{
    if (slot.load == load) return;
    slot.load = load;
    slot.loadLocked = load.has_value();
}

// Why a dose can't be; empty: it can.
QString doseProblem(const Slot& slot)
{
    const RepBand& band = slot.band;
    if (slot.sets < 1 || slot.sets > kMostSlotSets) return BlockDoseText::tr("A lift has 1 to 30 sets.");
    if (band.low < 1 || band.high < band.low || band.high > kMostBandReps)
        return BlockDoseText::tr("A rep band begins with its low end, 1 or more, and ends at 100 at most.");
    if (slot.plannedRir && (slot.plannedRir->isNegative() || slot.plannedRir->toDouble() > kMostReserve))
        return BlockDoseText::tr("Repetitions in reserve are 0 to 10.");
    if (slot.restSeconds && (*slot.restSeconds < 0 || *slot.restSeconds > kMostRestSeconds))
        return BlockDoseText::tr("A rest is half an hour at most.");
    return {};
}

template <class Change>
Result<Block> changeDose(Block block, const PlanPlaces& places, Change change)
{
    for (const PlanPlace& place : places) {
        const Slot* slot = slotAt(std::as_const(block), place);
        if (!slot) continue;
        Slot trial = *slot;
        change(trial);
        if (const QString problem = doseProblem(trial); !problem.isEmpty()) return fail(ErrorCode::Invalid, problem);
    }
    return changeEach(std::move(block), places, soAlready(), change);
}

int freeNumber(const PlannedDay& day)
{
    int number = 1;
    while (std::ranges::find(day.slotList, number, &Slot::superset) != day.slotList.end()) ++number;
    return number;
}

void toggleInDay(PlannedDay& day, const std::vector<std::size_t>& chosen)
{
    const int number = day.slotList[chosen.front()].superset;
    const auto inIt = [&](std::size_t at) { return day.slotList[at].superset == number; };
    const bool together = number > 0 && std::ranges::all_of(chosen, inIt);
    const int next = together ? 0 : freeNumber(day);
    for (const std::size_t at : chosen) day.slotList[at].superset = next;
    tidySupersets(day);
}

Decimal onTheWay(const Decimal& first, const Decimal& last, double share)
{
    const bool whole = first.trimmed().decimals() == 0 && last.trimmed().decimals() == 0;
    const double steps = whole ? 1 : 2;
    const double value = first.toDouble() + (last.toDouble() - first.toDouble()) * share;
    return Decimal::nearest(std::round(value * steps) / steps, whole ? 0 : 1);
}

}  // namespace

Result<Block> changeSets(Block block, const PlanPlaces& places, int by)
{
    const QString nothing = by < 0 ? BlockDoseText::tr("One set is the least; take the lift out instead.")
                                   : BlockDoseText::tr("%n set(s) of one lift are the most.", nullptr, kMostSlotSets);
    return changeEach(std::move(block), places, nothing,
                      [by](Slot& slot) { slot.sets = std::clamp(slot.sets + by, 1, kMostSlotSets); });
}

Result<Block> setSets(Block block, const PlanPlaces& places, int sets)
{
    return changeDose(std::move(block), places, [sets](Slot& slot) { slot.sets = sets; });
}

Result<Block> setBand(Block block, const PlanPlaces& places, const RepBand& band)
{
    return changeDose(std::move(block), places, [&](Slot& slot) {
        if (slot.band == band) return;
        slot.band = band;
        if (!slot.loadLocked) slot.load.reset();  // it was planned for the band before
    });
}

Result<Block> setReserve(Block block, const PlanPlaces& places, std::optional<Decimal> reserve)
{
    return changeDose(std::move(block), places, [&](Slot& slot) { slot.plannedRir = reserve; });
}

Result<Block> setRest(Block block, const PlanPlaces& places, std::optional<int> seconds)
{
    return changeDose(std::move(block), places, [&](Slot& slot) { slot.restSeconds = seconds; });
}

Result<Block> setLoad(Block block, const PlanPlaces& places, std::optional<Load> load)
{
    return changeEach(std::move(block), places, soAlready(), [&](Slot& slot) {
        slot.load = load;
        slot.loadLocked = load.has_value();
    });
}

Result<Block> setLoadLocked(Block block, const PlanPlaces& places, bool locked)
{
    const QString nothing = locked ? BlockDoseText::tr("There is no load to keep: type one first.") : soAlready();
    return changeEach(std::move(block), places, nothing,
                      [&](Slot& slot) { slot.loadLocked = locked && slot.load.has_value(); });
}

Result<Block> setProgression(Block block, const PlanPlaces& places, const QString& rule)
{
    return changeEach(std::move(block), places, soAlready(), [&](Slot& slot) { slot.progression = rule; });
}

Result<Block> setNote(Block block, const PlanPlaces& places, const QString& note)
{
    return changeEach(std::move(block), places, soAlready(),
                      [clean = cleanNote(note)](Slot& slot) { slot.note = clean; });
}

Result<Block> setDose(Block block, const PlanPlaces& places, const Slot& typed)
{
    return changeDose(std::move(block), places, [&](Slot& slot) {
        slot.sets = typed.sets;
        slot.band = typed.band;
        slot.plannedRir = typed.plannedRir;
        slot.restSeconds = typed.restSeconds;
        slot.note = cleanNote(typed.note);
        takeLoad(slot, typed.load);
    });
}

Result<Block> toggleSuperset(Block block, const PlanPlaces& places)
{
    const Block was = block;
    std::map<DayPlace, std::vector<std::size_t>> byDay;
    for (const PlanPlace& place : places)
        if (slotAt(block, place)) byDay[{place.week, place.day}].push_back(place.slot);
    for (const auto& [at, chosen] : byDay) toggleInDay(block.weeks[at.week].days[at.day], chosen);
    return changedBlock(was, std::move(block),
                        BlockDoseText::tr("A superset needs two lifts of one day or more: choose them together."));
}

Result<Block> rampReserve(Block block, std::size_t fromWeek, Decimal first, Decimal last)
{
    const Block was = block;
    if (first.isNegative() || last.isNegative() || std::max(first.toDouble(), last.toDouble()) > kMostReserve)
        return fail(ErrorCode::Invalid, BlockDoseText::tr("Repetitions in reserve are 0 to 10."));
    std::vector<std::size_t> weeks;
    for (std::size_t week = fromWeek; week < block.weeks.size(); ++week)
        if (block.weeks[week].kind == WeekKind::Normal) weeks.push_back(week);
    for (std::size_t i = 0; i < weeks.size(); ++i) {
        const double share = weeks.size() < 2 ? 0 : static_cast<double>(i) / static_cast<double>(weeks.size() - 1);
        for (const PlanPlace& place : placesOfWeek(block, weeks[i]))
            slotAt(block, place)->plannedRir = onTheWay(first, last, share);
    }
    return changedBlock(was, std::move(block), soAlready());
}

Slot easedSlot(const Slot& slot, const Easing& easing)
{
    constexpr int kWhole = 100;
    Slot eased = slot;
    eased.sets = std::clamp((slot.sets * easing.setsPercent + kWhole - 1) / kWhole, 1, kMostSlotSets);
    const double reserve = slot.plannedRir ? slot.plannedRir->toDouble() : kUsualReserve;
    const int decimals = slot.plannedRir ? slot.plannedRir->decimals() : 0;
    eased.plannedRir = Decimal::nearest(std::min<double>(reserve + easing.moreReserve, kMostReserve), decimals);
    if (slot.loadLocked && slot.load) {
        const Mass lighter = Mass::fromSteps(slot.load->mass().steps() / kWhole * easing.loadPercent);
        eased.load = Load::nearest(lighter, slot.load->unit());
    } else {
        eased.load.reset();
    }
    return eased;
}

}  // namespace steelyard
