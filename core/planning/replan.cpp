#include "core/planning/replan.h"

#include "core/planning/comparable.h"
#include "core/planning/load_steps.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kDaysOfAWeek = 7;
constexpr int kMostSets = 30;

bool isLift(const Slot& slot, const LiftLine& lift)
{
    return slot.variant == lift.variant && slot.grip == lift.grip && slot.standard == lift.standard;
}

bool hasLift(const PlannedDay& day, const LiftLine& lift)
{
    return std::ranges::any_of(day.slotList, [&](const Slot& slot) { return isLift(slot, lift); });
}

Decimal plusWhole(const Decimal& value, int whole)
{
    std::int64_t scale = 1;
    for (int i = 0; i < value.decimals(); ++i) scale *= 10;
    return Decimal::fromScaled(value.mantissa() + whole * scale, value.decimals());
}

std::optional<QDate> nextPlannedDay(const Block& block, QDate today)
{
    std::optional<QDate> next;
    for (const PlannedWeek& week : block.weeks)
        for (const PlannedDay& day : week.days)
            if (day.date > today && !day.slotList.empty() && (!next || day.date < *next)) next = day.date;
    return next;
}

// The changed copy of one block, row by row.
class Replanner {
public:
    Replanner(const ReplanInput& input, const ReplanChoice& choice, const Row<Block>& row)
        : m_input(input), m_choice(choice), m_row(row), m_block(row.value)
    {
        const QDate first = nextPlannedDay(m_block, input.today).value_or(input.today.addDays(1));
        m_last = choice.scope == ReplanScope::NextWeek ? first.addDays(kDaysOfAWeek - 1) : QDate(9999, 12, 31);
    }

    [[nodiscard]] Replan run()
    {
        if (m_input.action == u"deload")
            easeNextWeek();
        else if (m_input.action == u"move_day")
            moveLift();
        else
            changeSlots();
        std::ranges::stable_sort(m_changes, {}, &PlannedChange::dayBefore);
        if (m_changes.empty())
            return {m_planned ? ReplanOutcome::NothingToChange : ReplanOutcome::NotPlanned, {}, {}, {}};
        return {ReplanOutcome::Changed, m_row.id, std::move(m_block), std::move(m_changes)};
    }

private:
    [[nodiscard]] bool isOpen(const PlannedDay& day) const
    {
        return day.date > m_input.today && day.date <= m_last && !day.slotList.empty();
    }
    void easeNextWeek();
    void moveLift();
    void moveWithin(PlannedWeek& week, PlannedDay& from);
    void changeSlots();
    void changeSlot(PlannedDay& day, Slot& slot, WeekKind kind);
    [[nodiscard]] bool isMeant(const Slot& slot) const;
    [[nodiscard]] std::optional<Slot> changed(const Slot& slot, WeekKind kind) const;
    [[nodiscard]] std::optional<Slot> dosed(Slot slot) const;
    [[nodiscard]] std::optional<Slot> onOtherLine(Slot slot) const;

    const ReplanInput& m_input;
    const ReplanChoice& m_choice;
    const Row<Block>& m_row;
    Block m_block;
    QDate m_last;
    bool m_planned = false;  // something that the action is about stands in the days that may change
    std::vector<PlannedChange> m_changes;
};

void Replanner::easeNextWeek()
{
    const auto week = std::ranges::find_if(m_block.weeks, [&](const PlannedWeek& one) {
        const auto ahead = [&](const PlannedDay& day) { return day.date > m_input.today; };
        const auto filled = [](const PlannedDay& day) { return !day.slotList.empty(); };
        return std::ranges::all_of(one.days, ahead) && std::ranges::any_of(one.days, filled);
    });
    if (week == m_block.weeks.end()) return;
    m_planned = true;
    if (week->kind == WeekKind::Deload) return;
    week->kind = WeekKind::Deload;
    for (PlannedDay& day : week->days)
        for (Slot& slot : day.slotList) {
            const Slot before = slot;
            slot.sets = (slot.sets + 1) / 2;
            slot.plannedRir = plusWhole(slot.plannedRir.value_or(Decimal(kUsualReserve)), kEasierReserve);
            slot.load.reset();
            m_changes.push_back({day.date, before, day.date, slot});
        }
}

void Replanner::moveWithin(PlannedWeek& week, PlannedDay& from)
{
    const auto slot = std::ranges::find_if(from.slotList, [&](const Slot& one) { return isLift(one, *m_input.lift); });
    if (slot == from.slotList.end()) return;
    m_planned = true;
    const auto to = std::ranges::find_if(week.days, [&](const PlannedDay& day) {
        return isOpen(day) && day.date.dayOfWeek() == m_choice.weekday && day.date != from.date;
    });
    if (to == week.days.end() || hasLift(*to, *m_input.lift)) return;
    m_changes.push_back({from.date, *slot, to->date, *slot});
    to->slotList.push_back(*slot);
    from.slotList.erase(slot);
}

void Replanner::moveLift()
{
    for (PlannedWeek& week : m_block.weeks)
        for (PlannedDay& day : week.days)
            if (isOpen(day)) moveWithin(week, day);
}

void Replanner::changeSlots()
{
    for (PlannedWeek& week : m_block.weeks)
        for (PlannedDay& day : week.days)
            if (isOpen(day))
                for (Slot& slot : day.slotList)
                    if (isMeant(slot)) changeSlot(day, slot, week.kind);
}

bool Replanner::isMeant(const Slot& slot) const
{
    if (!m_input.lift) return true;
    if (m_input.action != u"keep_line") return isLift(slot, *m_input.lift);
    const auto* mine = m_input.library.find(m_input.lift->variant);
    const auto* other = m_input.library.find(slot.variant);
    return mine && other && mine->value.exercise == other->value.exercise;
}

void Replanner::changeSlot(PlannedDay& day, Slot& slot, WeekKind kind)
{
    m_planned = true;
    const auto after = changed(slot, kind);
    if (!after || *after == slot) return;
    const LiftLine line{m_input.log.athlete.id, after->variant, after->grip, after->standard};
    if (!isLift(slot, line) && hasLift(day, line)) return;
    m_changes.push_back({day.date, slot, day.date, *after});
    slot = *after;
}

std::optional<Slot> Replanner::changed(const Slot& slot, WeekKind kind) const
{
    const QString& action = m_input.action;
    if (action == u"change_band") {
        Slot after = slot;
        if (m_choice.band && *m_choice.band != slot.band) {
            after.band = *m_choice.band;
            after.load.reset();
        }
        return after;
    }
    if (action == u"change_grip" || action == u"change_variant" || action == u"keep_line") return onOtherLine(slot);
    if (kind != WeekKind::Normal) return std::nullopt;
    return dosed(slot);
}

std::optional<Slot> Replanner::dosed(Slot slot) const
{
    const QString& action = m_input.action;
    if (action == u"drop_set") slot.sets = std::max(1, slot.sets - 1);
    if (action == u"add_set") slot.sets = std::min(kMostSets, slot.sets + 1);
    if (action == u"harder_sets") {
        const Decimal harder = slot.plannedRir ? plusWhole(*slot.plannedRir, -1) : Decimal(kReserveNearFailure);
        slot.plannedRir = harder.isNegative() ? Decimal() : harder;
    }
    if (action == u"hold_load") {
        const LineRecord* line = lineOf(m_input.log, slot);
        const auto before = line ? comparableBefore(*line, m_input.today.addDays(1)) : std::vector<Exposure>();
        if (before.empty()) return std::nullopt;
        slot.load = workingLoad(doneSets(before.back()));
    }
    return slot;
}

std::optional<Slot> Replanner::onOtherLine(Slot slot) const
{
    const Slot before = slot;
    if (m_input.action == u"keep_line" && m_input.lift) {
        slot.variant = m_input.lift->variant;
        slot.grip = m_input.lift->grip;
        slot.standard = m_input.lift->standard;
    } else if (m_choice.variant) {
        const auto lift = liftWithVariant(m_input, *m_choice.variant);
        if (!lift) return std::nullopt;
        slot.variant = lift->variant;
        slot.grip = lift->grip;
        slot.standard = lift->standard;
    } else if (m_choice.grip) {
        slot.grip = *m_choice.grip;
    }
    if (slot != before) slot.load.reset();
    return slot;
}

}  // namespace

const Row<Block>* blockAhead(const AthleteLog& log, QDate today)
{
    const Row<Block>* found = nullptr;
    std::optional<QDate> soonest;
    for (const Row<Block>& row : log.blocks) {
        const auto next = nextPlannedDay(row.value, today);
        if (!next || (soonest && *next >= *soonest)) continue;
        soonest = next;
        found = &row;
    }
    return found;
}

std::vector<LiftLine> liftsAhead(const AthleteLog& log, QDate today)
{
    std::vector<LiftLine> lifts;
    const Row<Block>* row = blockAhead(log, today);
    if (!row) return lifts;
    for (const PlannedWeek& week : row->value.weeks)
        for (const PlannedDay& day : week.days)
            for (const Slot& slot : day.slotList) {
                const LiftLine lift{log.athlete.id, slot.variant, slot.grip, slot.standard};
                if (day.date > today && std::ranges::find(lifts, lift) == lifts.end()) lifts.push_back(lift);
            }
    return lifts;
}

Replan replan(const ReplanInput& input, const ReplanChoice& choice)
{
    const ActionPlace place = placeOf(input.action);
    if (place != ActionPlace::Plan)
        return {place == ActionPlace::Sheet ? ReplanOutcome::OnSheet : ReplanOutcome::AtDesk, {}, {}, {}};
    const Row<Block>* row = blockAhead(input.log, input.today);
    if (!row) return {ReplanOutcome::NoBlock, {}, {}, {}};
    if (needsLift(input.action) && !input.lift) return {ReplanOutcome::NotPlanned, {}, {}, {}};
    ReplanChoice made = choice;
    if (!choice.grip && !choice.variant && !choice.band && !choice.weekday)
        if (const auto choices = choicesFor(input); !choices.empty()) {
            made = choices.front();
            made.scope = choice.scope;
        }
    return Replanner(input, made, *row).run();
}

}  // namespace steelyard
