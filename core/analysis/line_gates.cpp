#include "core/analysis/line_gates.h"

#include "core/analysis/planned_hold.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kWeekLength = 7;

// Exposures up to the day.
std::span<const CountedExposure> upTo(std::span<const CountedExposure> counted, QDate day)
{
    const auto end = std::ranges::upper_bound(counted, day, {}, [](const CountedExposure& c) { return c.point.date; });
    return counted.first(static_cast<std::size_t>(end - counted.begin()));
}

// Visits the last `most` exposures with working sets, newest first.
template <class Visit>
void visitLastWorking(std::span<const CountedExposure> counted, int most, Visit&& visit)
{
    for (auto it = counted.rbegin(); it != counted.rend() && most > 0; ++it) {
        if (it->point.workSets == 0) continue;
        visit(*it);
        --most;
    }
}

void judgeNumber(LineGates& gates, std::span<const CountedExposure> counted, QDate day, const VerdictThresholds& limits)
{
    gates.exposures = counted.size();
    const QDate since = day.addDays(-kWeekLength * limits.recentWeeks);
    for (auto it = counted.rbegin(); it != counted.rend() && it->point.date > since; ++it) ++gates.exposuresLately;
    if (!counted.empty())
        gates.weeksOfRecord = static_cast<double>(counted.front().point.date.daysTo(day)) / kWeekLength;
    gates.tooFew = gates.exposures < static_cast<std::size_t>(limits.leastExposures)
                   || gates.exposuresLately < static_cast<std::size_t>(limits.leastRecentExposures)
                   || gates.weeksOfRecord < limits.leastWeeks;
}

std::optional<double> meanOffShareOf(std::span<const CountedExposure> counted, int most)
{
    double sum = 0;
    int watched = 0;
    visitLastWorking(counted, most, [&](const CountedExposure& exposure) {
        if (const auto share = exposure.helpedShare()) {
            sum += *share;
            ++watched;
        }
    });
    if (watched == 0) return std::nullopt;
    return sum / watched;
}

void judgeStandard(LineGates& gates, std::span<const CountedExposure> counted, const VerdictThresholds& limits)
{
    const auto lately = meanOffShareOf(counted, limits.mixedExposures);
    const auto last = meanOffShareOf(counted, limits.mixedLastExposures);
    gates.offShareLately = std::max(lately.value_or(0), last.value_or(0));
    gates.mixed = lately.value_or(0) > limits.mostOffShare || last.value_or(0) > limits.mostOffShareLast;
}

void judgeEffort(LineGates& gates, std::span<const CountedExposure> counted, const VerdictThresholds& limits)
{
    double sum = 0;
    int exposures = 0;
    visitLastWorking(counted, limits.effortExposures, [&](const CountedExposure& exposure) {
        sum += 1.0 - static_cast<double>(exposure.effortSets) / exposure.point.workSets;
        ++exposures;
    });
    if (exposures == 0) return;
    gates.effortlessShare = sum / exposures;
    gates.effortUnknown = gates.effortlessShare > limits.mostEffortless;
}

void judgeBreak(LineGates& gates, std::span<const CountedExposure> counted, QDate day, const VerdictThresholds& limits)
{
    for (std::size_t i = counted.size(); i-- > 1;) {
        const QDate back = counted[i].point.date;
        if (back.daysTo(day) >= kWeekLength * limits.afterLayoffWeeks) return;
        const qint64 days = counted[i - 1].point.date.daysTo(back);
        if (days <= limits.layoffDays) continue;
        gates.afterLayoff = true;
        gates.layoffDays = days;
        return;
    }
}

bool isEasyWeek(std::span<const CountedExposure> counted, const std::vector<Row<Block>>& blocks, QDate day)
{
    if (!counted.empty() && counted.back().point.deload && counted.back().point.date.daysTo(day) < kWeekLength)
        return true;
    return std::ranges::any_of(blocks, [&](const Row<Block>& block) {
        const auto week = weekOfBlock(block.value, day);
        return week && block.value.weeks[*week].kind == WeekKind::Deload;
    });
}

}  // namespace

LineGates gatesAt(std::span<const CountedExposure> all, const std::vector<Row<Block>>& blocks, QDate day,
                  const VerdictThresholds& limits, const std::optional<LiftLine>& line)
{
    const auto counted = upTo(all, day);
    LineGates gates;
    judgeNumber(gates, counted, day, limits);
    judgeStandard(gates, counted, limits);
    judgeEffort(gates, counted, limits);
    judgeBreak(gates, counted, day, limits);
    gates.deload = isEasyWeek(counted, blocks, day);
    gates.plannedHold = line && isHoldPlanned(*line, blocks, day);
    return gates;
}

qint64 weekOf(QDate day)
{
    // Julian day 0 was a Monday.
    return day.toJulianDay() / kWeekLength;
}

QDate lastDayOfWeek(qint64 week)
{
    return QDate::fromJulianDay(week * kWeekLength + kWeekLength - 1);
}

}  // namespace steelyard
