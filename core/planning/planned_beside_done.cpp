#include "core/planning/planned_beside_done.h"

#include "core/planning/block_places.h"
#include "core/planning/comparable.h"

#include <algorithm>

namespace steelyard {
namespace {

const Exposure* exposureOn(const LineRecord& line, QDate day)
{
    const auto found = std::ranges::find(line.exposures, day, &Exposure::date);
    return found == line.exposures.end() ? nullptr : &*found;
}

bool isPlannedSet(const SetEntry& set, WeekKind week)
{
    if (set.kind == SetKind::Deload) return week == WeekKind::Deload;
    return set.kind == SetKind::Work || set.kind == SetKind::Test;
}

void takeSets(SlotBesideDone& beside, const LineRecord& line, const Exposure& exposure, WeekKind week)
{
    for (const LoggedSet& logged : exposure.sets) {
        if (!isPlannedSet(logged.set, week)) continue;
        beside.loads.push_back(logged.set.load);
        beside.countedReps.push_back(logged.set.countedReps());
        beside.line = &line;
    }
}

bool isOnDay(const PlannedDay& day, const LineRecord& line)
{
    return std::ranges::any_of(day.slotList, [&](const Slot& slot) {
        return slot.variant == line.variant.id && slot.grip == line.grip.id && slot.standard == line.standard.id;
    });
}

// Another line of the slot's exercise, which isn't planned for that day anyway.
void takeOtherLine(SlotBesideDone& beside, const AthleteLog& log, const PlannedDay& day, const LineRecord& own,
                   QDate date, WeekKind week)
{
    for (const LineRecord& other : log.lines) {
        if (other.exercise.id != own.exercise.id || isOnDay(day, other)) continue;
        if (const Exposure* exposure = exposureOn(other, date)) takeSets(beside, other, *exposure, week);
        if (beside.line) return;
    }
}

SlotBesideDone besideOf(const AthleteLog& log, const PlannedDay& day, const Slot& slot, std::optional<QDate> date,
                        WeekKind week)
{
    SlotBesideDone beside{SlotOutcome::Skipped, slot.sets, slot.band, slot.load, {}, {}};
    const LineRecord* own = lineOf(log, slot);
    if (!date) return beside;
    if (own)
        if (const Exposure* exposure = exposureOn(*own, *date)) takeSets(beside, *own, *exposure, week);
    if (beside.line) {
        beside.outcome = std::ssize(beside.loads) < slot.sets ? SlotOutcome::Fewer : SlotOutcome::Done;
        return beside;
    }
    // A line that was never done has no record that says which exercise it is; the others of the variant do.
    const auto sameVariant = [&](const LineRecord& line) { return line.variant.id == slot.variant; };
    const auto like = std::ranges::find_if(log.lines, sameVariant);
    if (!own && like != log.lines.end()) own = &*like;
    if (own) takeOtherLine(beside, log, day, *own, *date, week);
    if (beside.line) beside.outcome = SlotOutcome::Changed;
    return beside;
}

// The session of each planned day of a week: its own date first, then what is left of the week, in order.
std::vector<std::optional<QDate>> sessionsOf(const AthleteLog& log, const PlannedWeek& week, QDate first, QDate today)
{
    std::vector<QDate> free;
    for (const QDate date : log.sessionDates)
        if (date >= first && date < first.addDays(kDaysOfPlanWeek) && date <= today) free.push_back(date);
    std::vector<std::optional<QDate>> sessions(week.days.size());
    for (std::size_t i = 0; i < week.days.size(); ++i)
        if (std::erase(free, week.days[i].date) > 0) sessions[i] = week.days[i].date;
    auto next = free.begin();
    for (std::size_t i = 0; i < week.days.size() && next != free.end(); ++i)
        if (!sessions[i] && !week.days[i].slotList.empty()) sessions[i] = *next++;
    return sessions;
}

bool isOnTarget(const SlotBesideDone& slot, std::size_t set)
{
    const bool heavy = !slot.plannedLoad || slot.loads[set].mass() >= slot.plannedLoad->mass();
    return heavy && slot.countedReps[set] >= slot.plannedBand.low;
}

void addSets(Adherence& sum, const SlotBesideDone& slot)
{
    const std::size_t counted = std::min(slot.loads.size(), static_cast<std::size_t>(std::max(0, slot.plannedSets)));
    sum.doneSets += static_cast<int>(counted);
    for (std::size_t set = 0; set < counted; ++set) sum.targetSets += isOnTarget(slot, set) ? 1 : 0;
}

void addWeek(Adherence& sum, const WeekBesideDone& week)
{
    for (const DayBesideDone& day : week.days) {
        if (!day.expected || day.slotList.empty()) continue;
        ++sum.expectedSessions;
        sum.doneSessions += day.done ? 1 : 0;
        for (const SlotBesideDone& slot : day.slotList) {
            sum.expectedSets += slot.plannedSets;
            sum.skippedSlots += slot.outcome == SlotOutcome::Skipped ? 1 : 0;
            sum.changedSlots += slot.outcome == SlotOutcome::Changed ? 1 : 0;
            if (slot.outcome == SlotOutcome::Done || slot.outcome == SlotOutcome::Fewer) addSets(sum, slot);
        }
    }
}

std::optional<double> shareOf(int part, int whole)
{
    return whole > 0 ? std::optional(static_cast<double>(part) / whole) : std::nullopt;
}

}  // namespace

std::optional<double> Adherence::sessionShare() const
{
    return shareOf(doneSessions, expectedSessions);
}

std::optional<double> Adherence::setShare() const
{
    return shareOf(doneSets, expectedSets);
}

std::optional<double> Adherence::targetShare() const
{
    return shareOf(targetSets, doneSets);
}

Adherence PlannedBesideDone::ofWeek(std::size_t week) const
{
    Adherence sum;
    if (week < weeks.size()) addWeek(sum, weeks[week]);
    return sum;
}

Adherence PlannedBesideDone::ofBlock() const
{
    Adherence sum;
    for (const WeekBesideDone& week : weeks) addWeek(sum, week);
    return sum;
}

PlannedBesideDone plannedBesideDone(const AthleteLog& log, const Block& block, QDate today)
{
    PlannedBesideDone out;
    for (std::size_t w = 0; w < block.weeks.size(); ++w) {
        const PlannedWeek& week = block.weeks[w];
        const auto sessions =
            sessionsOf(log, week, block.start.addDays(kDaysOfPlanWeek * static_cast<qint64>(w)), today);
        WeekBesideDone beside;
        for (std::size_t d = 0; d < week.days.size(); ++d) {
            const PlannedDay& day = week.days[d];
            DayBesideDone one{
                day.date, sessions[d], sessions[d] || (day.date < today && !isDayOff(block, day.date)), {}};
            for (const Slot& slot : day.slotList) {
                one.slotList.push_back(besideOf(log, day, slot, one.done, week.kind));
                if (!one.expected) one.slotList.back().outcome = SlotOutcome::Ahead;
            }
            beside.days.push_back(std::move(one));
        }
        out.weeks.push_back(std::move(beside));
    }
    return out;
}

}  // namespace steelyard
