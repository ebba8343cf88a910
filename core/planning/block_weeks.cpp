#include "core/planning/block_layout.h"
#include "core/planning/block_ops.h"
#include "core/planning/replan.h"

#include "core/base/text.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

struct BlockWeekText {
    Q_DECLARE_TR_FUNCTIONS(BlockWeekText)
};

using WeekIterator = std::vector<PlannedWeek>::difference_type;

tl::unexpected<Error> refused(const QString& why)
{
    return fail(ErrorCode::Invalid, why);
}

Result<void> roomForAWeek(const Block& block)
{
    if (block.weeks.size() < kMostBlockWeeks) return {};
    return refused(
        BlockWeekText::tr("%n week(s) are the most that one block has.", nullptr, static_cast<int>(kMostBlockWeeks)));
}

void shiftWeek(PlannedWeek& week, int days)
{
    for (PlannedDay& day : week.days) day.date = day.date.addDays(days);
}

// The lift as the nearest normal week has it, that before first.
const Slot* fromNormalWeek(const Block& block, std::size_t week, const Slot& lift)
{
    const auto find = [&](std::size_t at) -> const Slot* {
        if (block.weeks[at].kind != WeekKind::Normal) return nullptr;
        for (const PlannedDay& day : block.weeks[at].days)
            for (const Slot& slot : day.slotList)
                if (isSameLift(slot, lift)) return &slot;
        return nullptr;
    };
    for (std::size_t away = 1; away < block.weeks.size(); ++away) {
        if (away <= week)
            if (const Slot* slot = find(week - away)) return slot;
        if (week + away < block.weeks.size())
            if (const Slot* slot = find(week + away)) return slot;
    }
    return nullptr;
}

// Without a normal week to look at the easing is taken back as well as whole numbers allow.
void makeUsual(const Block& block, std::size_t week, Slot& slot, WeekKind was)
{
    if (const Slot* usual = fromNormalWeek(block, week, slot)) {
        slot.sets = usual->sets;
        slot.plannedRir = usual->plannedRir;
        slot.load = usual->load;
        slot.loadLocked = usual->loadLocked;
        return;
    }
    slot.load.reset();
    slot.loadLocked = false;
    if (was != WeekKind::Deload) return;
    const int percent = std::max(1, block.easing.setsPercent);
    slot.sets = std::clamp(slot.sets * 100 / percent, 1, kMostSlotSets);
    if (!slot.plannedRir) return;
    const double usual = std::max(0.0, slot.plannedRir->toDouble() - block.easing.moreReserve);
    slot.plannedRir = Decimal::nearest(usual, slot.plannedRir->decimals());
}

void makeTested(Slot& slot)
{
    slot.sets = 1;
    slot.plannedRir = Decimal(kReserveNearFailure);
    slot.load.reset();
    slot.loadLocked = false;
}

std::optional<QDate> freeDay(const Block& block, std::size_t week, QDate from, QDate firstOpen)
{
    const QDate first = firstDayOf(block, week);
    const auto isFree = [&](QDate date) {
        return date >= firstOpen && date >= first && date < first.addDays(kDaysOfPlanWeek) && !isDayOff(block, date)
               && !dayOn(block, date);
    };
    for (int away = 1; away < kDaysOfPlanWeek; ++away)
        if (isFree(from.addDays(away))) return from.addDays(away);
    for (int away = 1; away < kDaysOfPlanWeek; ++away)
        if (isFree(from.addDays(-away))) return from.addDays(-away);
    return std::nullopt;
}

bool isWhollyOff(const Block& block, std::size_t week)
{
    for (int day = 0; day < kDaysOfPlanWeek; ++day)
        if (!isDayOff(block, firstDayOf(block, week).addDays(day))) return false;
    return true;
}

Result<void> leaveDaysOff(Block& block, std::size_t week, QDate firstOpen)
{
    for (std::size_t day = 0; day < block.weeks[week].days.size(); ++day) {
        const QDate date = block.weeks[week].days[day].date;
        if (date < firstOpen || !isDayOff(block, date)) continue;
        const auto other = freeDay(block, week, date, firstOpen);
        if (!other)
            return refused(
                BlockWeekText::tr("Week %1 has more sessions than days that are free: take one out first, or "
                                  "let the week begin later.")
                    .arg(week + 1));
        block.weeks[week].days[day].date = *other;
    }
    sortDays(block.weeks[week]);
    return {};
}

// The days of a week on their weekdays, in the seven days that the week has now.
void keepWeekdays(Block& block, std::size_t week)
{
    const QDate first = firstDayOf(block, week);
    for (PlannedDay& day : block.weeks[week].days) {
        const int after = (day.date.dayOfWeek() - first.dayOfWeek() + kDaysOfPlanWeek) % kDaysOfPlanWeek;
        day.date = first.addDays(after);
    }
    sortDays(block.weeks[week]);
}

// The days of `week` from `from` on and all weeks behind go on by whole weeks; what has begun of the week stays.
Result<void> cutAndMoveOn(Block& block, std::size_t week, QDate from, int weeks)
{
    PlannedWeek begun{block.weeks[week].kind, {}};
    auto& open = block.weeks[week].days;
    const auto cut = std::ranges::find_if(open, [&](const PlannedDay& day) { return day.date >= from; });
    begun.days.assign(open.begin(), cut);
    open.erase(open.begin(), cut);
    if (begun.days.empty()) begun.kind = WeekKind::Normal;
    moveWeeks(block, week, kDaysOfPlanWeek * weeks);
    for (; weeks > 0; --weeks) {
        STEELYARD_CHECK(roomForAWeek(block));
        block.weeks.insert(block.weeks.begin() + static_cast<WeekIterator>(week), PlannedWeek{});
    }
    block.weeks[week] = std::move(begun);
    return {};
}

bool areWeekdays(const std::vector<int>& weekdays)
{
    const std::set<int> each(weekdays.begin(), weekdays.end());
    return !each.empty() && each.size() == weekdays.size() && *each.begin() >= 1 && *each.rbegin() <= kDaysOfPlanWeek;
}

// The dates of a week that fall on these weekdays, in order.
std::vector<QDate> datesOn(const Block& block, std::size_t week, const std::vector<int>& weekdays)
{
    std::vector<QDate> dates;
    for (int day = 0; day < kDaysOfPlanWeek; ++day) {
        const QDate date = firstDayOf(block, week).addDays(day);
        if (std::ranges::find(weekdays, date.dayOfWeek()) != weekdays.end()) dates.push_back(date);
    }
    return dates;
}

Result<void> redateWeek(Block& block, std::size_t week, const std::vector<int>& weekdays)
{
    const auto dates = datesOn(block, week, weekdays);
    auto& days = block.weeks[week].days;
    // Days without a lift are only places kept free, and go first.
    while (days.size() > dates.size()) {
        const auto bare = std::ranges::find_if(days, [](const PlannedDay& day) { return day.slotList.empty(); });
        if (bare == days.end())
            return refused(BlockWeekText::tr("Week %1 has more sessions than that: take one out first.").arg(week + 1));
        days.erase(bare);
    }
    for (std::size_t i = 0; i < dates.size(); ++i) {
        if (i < days.size())
            days[i].date = dates[i];
        else
            days.push_back({dates[i], {}, {}});
    }
    return {};
}

}  // namespace

void moveWeeks(Block& block, std::size_t fromWeek, int days)
{
    for (std::size_t week = fromWeek; week < block.weeks.size(); ++week) shiftWeek(block.weeks[week], days);
}

Result<Block> clearOfDaysOff(Block block, std::size_t fromWeek, QDate firstOpen)
{
    for (std::size_t week = fromWeek; week < block.weeks.size(); ++week) {
        const auto& days = block.weeks[week].days;
        const bool ahead = std::ranges::all_of(days, [&](const PlannedDay& day) { return day.date >= firstOpen; });
        if (ahead && !days.empty() && isWhollyOff(block, week)) {
            STEELYARD_CHECK(roomForAWeek(block));
            moveWeeks(block, week, kDaysOfPlanWeek);
            block.weeks.insert(block.weeks.begin() + static_cast<WeekIterator>(week), PlannedWeek{});
            continue;
        }
        STEELYARD_CHECK(leaveDaysOff(block, week, firstOpen));
    }
    return block;
}

Result<Block> setWeekKind(Block block, std::size_t week, WeekKind kind)
{
    if (week >= block.weeks.size()) return refused(BlockWeekText::tr("The block has no such week."));
    const Block was = block;
    PlannedWeek& planned = block.weeks[week];
    if (planned.kind == kind) return refused(BlockWeekText::tr("It is such a week already."));
    for (PlannedDay& day : planned.days)
        for (Slot& slot : day.slotList) {
            if (was.weeks[week].kind != WeekKind::Normal) makeUsual(was, week, slot, was.weeks[week].kind);
            if (kind == WeekKind::Deload) slot = easedSlot(slot, block.easing);
            if (kind == WeekKind::Test) makeTested(slot);
        }
    planned.kind = kind;
    return changedBlock(was, std::move(block), {});
}

Result<Block> duplicateWeek(Block block, std::size_t week)
{
    if (week >= block.weeks.size()) return refused(BlockWeekText::tr("The block has no such week."));
    STEELYARD_CHECK(roomForAWeek(block));
    PlannedWeek copy = block.weeks[week];
    shiftWeek(copy, kDaysOfPlanWeek);
    moveWeeks(block, week + 1, kDaysOfPlanWeek);
    block.weeks.insert(block.weeks.begin() + static_cast<WeekIterator>(week) + 1, std::move(copy));
    return clearOfDaysOff(std::move(block), week + 1, {});
}

Result<Block> insertWeek(Block block, std::size_t at)
{
    STEELYARD_CHECK(roomForAWeek(block));
    at = std::min(at, block.weeks.size());
    PlannedWeek blank;
    if (!block.weeks.empty()) {
        const std::size_t like = at > 0 ? at - 1 : 0;
        for (const PlannedDay& day : block.weeks[like].days)
            blank.days.push_back({day.date.addDays(at > 0 ? kDaysOfPlanWeek : 0), day.title, {}});
    }
    moveWeeks(block, at, kDaysOfPlanWeek);
    block.weeks.insert(block.weeks.begin() + static_cast<WeekIterator>(at), std::move(blank));
    return clearOfDaysOff(std::move(block), at, {});
}

Result<Block> removeWeek(Block block, std::size_t week)
{
    if (week >= block.weeks.size()) return refused(BlockWeekText::tr("The block has no such week."));
    if (block.weeks.size() == 1) return refused(BlockWeekText::tr("It is the only week: remove the block instead."));
    block.weeks.erase(block.weeks.begin() + static_cast<WeekIterator>(week));
    moveWeeks(block, week, -kDaysOfPlanWeek);
    return clearOfDaysOff(std::move(block), week, {});
}

Result<Block> setStart(Block block, QDate start)
{
    if (!start.isValid()) return refused(BlockWeekText::tr("A start date is needed."));
    const Block was = block;
    moveWeeks(block, 0, static_cast<int>(block.start.daysTo(start)));
    block.start = start;
    STEELYARD_TRY(block, clearOfDaysOff(std::move(block), 0, {}));
    return changedBlock(was, std::move(block), BlockWeekText::tr("It starts on that day already."));
}

Result<Block> shiftDays(Block block, QDate from, int days)
{
    const Block was = block;
    const auto isAhead = [&](const PlannedDay& day) { return day.date >= from; };
    const auto allAhead = [&](const PlannedWeek& week) { return std::ranges::all_of(week.days, isAhead); };
    const QDate start = block.start.addDays(days);
    if (std::ranges::all_of(block.weeks, allAhead)) return setStart(std::move(block), start);
    const auto first = static_cast<std::size_t>(
        std::ranges::find_if(block.weeks,
                             [&](const PlannedWeek& week) { return std::ranges::any_of(week.days, isAhead); })
        - block.weeks.begin());
    if (first == block.weeks.size()) return refused(BlockWeekText::tr("Nothing is planned from that day on."));
    if (days > 0 && days % kDaysOfPlanWeek == 0) {
        STEELYARD_CHECK(cutAndMoveOn(block, first, from, days / kDaysOfPlanWeek));
    } else {
        for (PlannedWeek& week : block.weeks)
            for (PlannedDay& day : week.days)
                if (isAhead(day)) day.date = day.date.addDays(days);
    }
    const QString wide = BlockWeekText::tr(
        "A session would leave its week or meet another. Shift by whole weeks, or choose other weekdays.");
    if (isLaidOutWell(was) && !isLaidOutWell(block)) return refused(wide);
    STEELYARD_TRY(block, clearOfDaysOff(std::move(block), first, from));
    return changedBlock(was, std::move(block), BlockWeekText::tr("Nothing moves."));
}

Result<Block> setWeekdays(Block block, const std::vector<int>& weekdays, std::size_t fromWeek)
{
    if (!areWeekdays(weekdays)) return refused(BlockWeekText::tr("Choose one to seven weekdays, each once."));
    const Block was = block;
    for (std::size_t week = fromWeek; week < block.weeks.size(); ++week)
        if (!isWhollyOff(block, week)) STEELYARD_CHECK(redateWeek(block, week, weekdays));
    STEELYARD_TRY(block, clearOfDaysOff(std::move(block), fromWeek, {}));
    return changedBlock(was, std::move(block), BlockWeekText::tr("It is so already."));
}

Result<Block> setDaysOff(Block block, std::vector<DaysOff> daysOff, QDate firstOpen)
{
    for (DaysOff& off : daysOff) {
        if (!off.first.isValid() || !off.last.isValid() || off.last < off.first)
            return refused(BlockWeekText::tr("Days off go from a first day to a last one."));
        off.reason = cleanName(off.reason);
    }
    std::ranges::sort(daysOff, {}, &DaysOff::first);
    const Block was = block;
    block.daysOff = std::move(daysOff);
    STEELYARD_TRY(block, clearOfDaysOff(std::move(block), 0, firstOpen));
    return changedBlock(was, std::move(block), BlockWeekText::tr("It is so already."));
}

Result<Block> repeatBlock(Block block, const QString& name, QDate start)
{
    if (!start.isValid()) return refused(BlockWeekText::tr("A start date is needed."));
    block.name = cleanName(name);
    block.daysOff.clear();
    // A week that was passed over was so for days off of its time.
    const auto passedOver = [](const PlannedWeek& week) { return week.days.empty(); };
    if (!std::ranges::all_of(block.weeks, passedOver)) std::erase_if(block.weeks, passedOver);
    block.start = start;
    for (std::size_t week = 0; week < block.weeks.size(); ++week) keepWeekdays(block, week);
    for (PlannedWeek& week : block.weeks)
        for (PlannedDay& day : week.days)
            for (Slot& slot : day.slotList) {
                slot.load.reset();
                slot.loadLocked = false;
            }
    const Problems problems = validate(block);
    if (!problems.empty()) return fail(ErrorCode::Invalid, problems.front().text, problems.front().field);
    return block;
}

Result<Block> blankBlock(const NewBlock& wanted)
{
    if (!wanted.start.isValid()) return refused(BlockWeekText::tr("A start date is needed."));
    if (wanted.weeks < 1 || wanted.weeks > kMostBlockWeeks)
        return refused(BlockWeekText::tr("A block has 1 to 52 weeks."));
    Block block{.athlete = wanted.athlete, .name = cleanName(wanted.name), .aim = cleanName(wanted.aim)};
    block.start = wanted.start;
    block.weeks.resize(wanted.weeks);
    if (wanted.lastIsDeload && wanted.weeks > 1) block.weeks.back().kind = WeekKind::Deload;
    if (block.name.isEmpty()) return refused(BlockWeekText::tr("A name is needed."));
    STEELYARD_TRY(block, setWeekdays(std::move(block), wanted.weekdays, 0));
    if (wanted.daysOff.empty()) return block;
    return setDaysOff(std::move(block), wanted.daysOff, {});
}

}  // namespace steelyard
