#include "core/planning/block_limits.h"

#include "core/analysis/discomfort_zones.h"
#include "core/domain/joint_words.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace steelyard {
namespace {

struct BlockLimitText {
    Q_DECLARE_TR_FUNCTIONS(BlockLimitText)
};

constexpr double kRounding = 1e-9;

class LimitFinder {
public:
    LimitFinder(const TotalsInput& input, const BlockTotals& totals) : m_input(input), m_totals(totals) {}

    [[nodiscard]] std::vector<BrokenLimit> run()
    {
        for (std::size_t week = 0; week < m_input.block.weeks.size(); ++week) {
            checkMuscles(week);
            for (std::size_t day = 0; day < m_input.block.weeks[week].days.size(); ++day) checkDay(week, day);
        }
        checkNeighbours();
        std::erase_if(m_broken, [&](const BrokenLimit& one) { return hasPassed(one); });
        std::ranges::stable_sort(m_broken, {}, [](const BrokenLimit& one) {
            // A whole week before its days, a whole day before its slots.
            const auto order = [](const std::optional<std::size_t>& at) { return at ? *at + 1 : 0; };
            return std::tuple(one.week, order(one.day), order(one.slot));
        });
        return std::move(m_broken);
    }

private:
    void checkMuscles(std::size_t week);
    void checkDay(std::size_t week, std::size_t day);
    void checkSlot(const PlanPlace& place, const Slot& slot);
    void checkNeighbours();
    void checkSpacing(const DayPlace& at, std::map<Id<Muscle>, QDate>& lastDay);
    // Nothing of it can be changed any more.
    [[nodiscard]] bool hasPassed(const BrokenLimit& one) const
    {
        const QDate last = one.day ? dateOf(m_input.block, {one.week, *one.day, 0})
                                   : firstDayOf(m_input.block, one.week).addDays(kDaysOfPlanWeek - 1);
        return last < m_input.today;
    }
    void add(LimitKind kind, const DayPlace& at, const QString& sentence)
    {
        m_broken.push_back({.kind = kind, .week = at.week, .day = at.day, .sentence = sentence});
    }
    [[nodiscard]] QString muscleName(Id<Muscle> muscle) const
    {
        const auto* row = m_input.library.find(muscle);
        return row ? row->value.name : QString();
    }

    const TotalsInput& m_input;
    const BlockTotals& m_totals;
    std::vector<BrokenLimit> m_broken;
};

void LimitFinder::checkMuscles(std::size_t week)
{
    if (m_totals.weeks[week].sets == 0) return;
    const bool judgesLow = m_input.block.weeks[week].kind == WeekKind::Normal;
    for (const MuscleTotal& row : m_totals.weeks[week].muscles) {
        const bool few = judgesLow && row.low && row.sets < *row.low - kRounding;
        const bool many = row.high && row.sets > *row.high + kRounding;
        if (!few && !many) continue;
        const QString sentence = BlockLimitText::tr("%1: %2 sets, %3 to %4 are wanted.")
                                     .arg(muscleName(row.muscle), m_input.wording.number(row.sets))
                                     .arg(*row.low)
                                     .arg(*row.high);
        m_broken.push_back({.kind = few ? LimitKind::FewSets : LimitKind::ManySets,
                            .week = week,
                            .muscle = row.muscle,
                            .sentence = sentence});
    }
}

void LimitFinder::checkDay(std::size_t week, std::size_t day)
{
    const PlannedDay& planned = m_input.block.weeks[week].days[day];
    const DayTotal& total = m_totals.weeks[week].days[day];
    const DayPlace at{week, day};
    const int minutes = static_cast<int>(std::lround(total.minutes));
    if (m_totals.minutesWanted && minutes > *m_totals.minutesWanted)
        add(LimitKind::LongDay, at,
            BlockLimitText::tr("About %1 minutes, %2 are there.").arg(minutes).arg(*m_totals.minutesWanted));
    if (total.backSets > kMostBackSets + kRounding)
        add(LimitKind::BackLoading, at,
            BlockLimitText::tr("The back is loaded by %1 sets, %2 are the most of a day.")
                .arg(m_input.wording.number(total.backSets), m_input.wording.number(kMostBackSets)));
    if (!planned.slotList.empty() && isDayOff(m_input.block, planned.date))
        add(LimitKind::DayOff, at, BlockLimitText::tr("It is a day off."));
    for (std::size_t slot = 0; slot < planned.slotList.size(); ++slot)
        checkSlot({week, day, slot}, planned.slotList[slot]);
}

void LimitFinder::checkSlot(const PlanPlace& place, const Slot& slot)
{
    const auto& slotList = m_input.block.weeks[place.week].days[place.day].slotList;
    const auto add = [&](LimitKind kind, const QString& sentence) {
        m_broken.push_back(
            {.kind = kind, .week = place.week, .day = place.day, .slot = place.slot, .sentence = sentence});
    };
    const auto before = slotList.begin() + static_cast<std::ptrdiff_t>(place.slot);
    if (std::any_of(slotList.begin(), before, [&](const Slot& other) { return isSameLift(other, slot); }))
        add(LimitKind::SameLiftTwice, BlockLimitText::tr("The same lift stands twice on this day."));
    const auto* variant = m_input.library.find(slot.variant);
    if (!variant) return;
    for (const JointComplaint& said : m_totals.complaints) {
        if (said.exercise != variant->value.exercise) continue;
        const QString words =
            discomfortZone(said.rating) == DiscomfortZone::High
                ? BlockLimitText::tr(
                    "The %1 was rated %2 of 10 in this exercise on %3: spare it, and have it looked at.")
                : BlockLimitText::tr("The %1 was rated %2 of 10 in this exercise on %3: watch it.");
        add(LimitKind::JointComplaint,
            words.arg(jointName(said.joint)).arg(said.rating).arg(m_input.wording.day(said.date)));
    }
}

void LimitFinder::checkSpacing(const DayPlace& at, std::map<Id<Muscle>, QDate>& lastDay)
{
    const PlannedDay& day = m_input.block.weeks[at.week].days[at.day];
    QStringList close;
    int days = 0;
    std::map<Id<Muscle>, QDate> today;
    for (const Slot& slot : day.slotList)
        for (const MuscleShare& share : sharesOf(slot, m_input.library)) {
            if (share.share < 1) continue;
            const auto last = lastDay.find(share.muscle);
            const auto since = last == lastDay.end() ? kLeastDaysBetween : last->second.daysTo(day.date);
            if (since < kLeastDaysBetween && today.try_emplace(share.muscle, day.date).second) {
                close << muscleName(share.muscle);
                days = static_cast<int>(since);
            }
            today[share.muscle] = day.date;
        }
    for (const auto& [muscle, date] : today) lastDay.insert_or_assign(muscle, date);
    if (!close.isEmpty())
        add(LimitKind::ShortSpacing, at,
            BlockLimitText::tr("Only %n day(s) after the last session of: %1.", nullptr, days)
                .arg(close.join(QStringLiteral(", "))));
}

void LimitFinder::checkNeighbours()
{
    std::map<Id<Muscle>, QDate> lastDay;
    std::optional<QDate> highBack;
    for (std::size_t week = 0; week < m_input.block.weeks.size(); ++week)
        for (std::size_t day = 0; day < m_input.block.weeks[week].days.size(); ++day) {
            const DayTotal& total = m_totals.weeks[week].days[day];
            if (highBack && highBack->daysTo(total.date) == 1 && total.backSets > 0)
                add(LimitKind::BackLoading, {week, day},
                    BlockLimitText::tr("The back is loaded on the day after a day of high back loading."));
            if (total.hasHighBack) highBack = total.date;
            checkSpacing({week, day}, lastDay);
        }
}

}  // namespace

std::vector<BrokenLimit> brokenLimits(const TotalsInput& input, const BlockTotals& totals)
{
    return LimitFinder(input, totals).run();
}

}  // namespace steelyard
