#include "core/domain/block.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

struct BlockText {
    Q_DECLARE_TR_FUNCTIONS(BlockText)
};

constexpr int kMostMinutesADay = 600;

bool isSound(const Slot& slot)
{
    return slot.sets >= 1 && slot.sets <= 30 && slot.band.low >= 1 && slot.band.high >= slot.band.low;
}

Problems problemsOfWeeks(const std::vector<PlannedWeek>& weeks, QDate start)
{
    Problems problems;
    for (const PlannedWeek& week : weeks)
        for (const PlannedDay& day : week.days) {
            if (!day.date.isValid() || day.date < start)
                problems.push_back({QStringLiteral("days"), BlockText::tr("Every planned day lies in the block.")});
            if (!std::ranges::all_of(day.slotList, isSound))
                problems.push_back(
                    {QStringLiteral("slots"),
                     BlockText::tr("A slot has 1 to 30 sets and a rep band that begins with its low end.")});
            if (std::ranges::any_of(day.slotList,
                                    [](const Slot& s) { return s.superset < 0 || s.superset > kMostSupersets; }))
                problems.push_back(
                    {QStringLiteral("slots"),
                     BlockText::tr("Slots that are done in turns share a number from 1 to %1.").arg(kMostSupersets)});
        }
    return problems;
}

void checkEasing(const Easing& easing, Problems& problems)
{
    const auto isPercent = [](int value) { return value >= 1 && value <= 100; };
    if (!isPercent(easing.setsPercent) || !isPercent(easing.loadPercent) || easing.moreReserve < 0
        || easing.moreReserve > 10)
        problems.push_back({QStringLiteral("easing"),
                            BlockText::tr("An easier week keeps 1 to 100 % of sets and load, and 0 to 10 repetitions "
                                          "more in reserve.")});
}

}  // namespace

std::optional<std::size_t> weekOfBlock(const Block& block, QDate day)
{
    constexpr qint64 kDays = 7;
    const qint64 days = block.start.daysTo(day);
    if (days < 0 || days / kDays >= std::ssize(block.weeks)) return std::nullopt;
    return static_cast<std::size_t>(days / kDays);
}

bool isDayOff(const Block& block, QDate day)
{
    return std::ranges::any_of(block.daysOff, [&](const DaysOff& off) { return off.first <= day && day <= off.last; });
}

Problems validate(const Block& block)
{
    Problems problems = problemsOfWeeks(block.weeks, block.start);
    if (block.name.isEmpty()) problems.push_back({QStringLiteral("name"), BlockText::tr("A name is needed.")});
    if (!block.start.isValid()) problems.push_back({QStringLiteral("start"), BlockText::tr("A start date is needed.")});
    if (block.minutesPerDay && (*block.minutesPerDay < 1 || *block.minutesPerDay > kMostMinutesADay))
        problems.push_back(
            {QStringLiteral("minutes"), BlockText::tr("A day has 1 to %1 minutes.").arg(kMostMinutesADay)});
    checkEasing(block.easing, problems);
    std::set<Id<Muscle>> muscles;
    for (const MuscleAim& aim : block.aims)
        if (aim.weeklySetsLow < 0 || aim.weeklySetsHigh < aim.weeklySetsLow || !muscles.insert(aim.muscle).second)
            problems.push_back(
                {QStringLiteral("aims"),
                 BlockText::tr("Each muscle has one band of weekly sets that begins with its low end.")});
    QDate after;
    for (const DaysOff& off : block.daysOff) {
        if (!off.first.isValid() || off.last < off.first || (after.isValid() && off.first <= after))
            problems.push_back({QStringLiteral("days_off"),
                                BlockText::tr("Days off end on or after the day they begin, and don't overlap.")});
        after = off.last;
    }
    return problems;
}

Problems validate(const BlockTemplate& shape)
{
    Problems problems = problemsOfWeeks(shape.weeks, kTemplateStart);
    if (shape.name.isEmpty()) problems.push_back({QStringLiteral("name"), BlockText::tr("A name is needed.")});
    checkEasing(shape.easing, problems);
    for (const PlannedWeek& week : shape.weeks)
        for (const PlannedDay& day : week.days)
            if (std::ranges::any_of(day.slotList, [](const Slot& slot) { return slot.load.has_value(); }))
                problems.push_back({QStringLiteral("slots"), BlockText::tr("A template has no loads.")});
    return problems;
}

}  // namespace steelyard
