#include "core/analysis/line_evidence.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kWeekDays = 7;

using CountedList = std::vector<CountedExposure>;

// The last `most` exposures with working sets, newest first.
std::vector<const CountedExposure*> lastWorking(const CountedList& counted, int most)
{
    std::vector<const CountedExposure*> last;
    for (auto it = counted.rbegin(); it != counted.rend() && std::ssize(last) < most; ++it)
        if (it->point.workSets > 0) last.push_back(&*it);
    return last;
}

std::optional<double> meanOffShare(const CountedList& counted, int most)
{
    double sum = 0;
    int watched = 0;
    for (const CountedExposure* exposure : lastWorking(counted, most))
        if (const auto share = exposure->offShare()) {
            sum += *share;
            ++watched;
        }
    if (watched == 0) return std::nullopt;
    return sum / watched;
}

void countFrequency(LineEvidence& evidence, QDate asOf, const VerdictThresholds& limits)
{
    std::optional<QDate> first;
    for (const CountedExposure& exposure : evidence.counted) {
        if (exposure.point.workSets == 0) continue;
        if (!first) first = exposure.point.date;
        ++evidence.working;
        if (exposure.point.date > asOf.addDays(-kWeekDays * limits.recentWeeks)) ++evidence.workingLately;
    }
    if (first) evidence.weeksOfRecord = static_cast<double>(first->daysTo(asOf)) / kWeekDays;
    evidence.tooFew = evidence.weeksOfRecord < limits.leastWeeks
                      || evidence.working < static_cast<std::size_t>(limits.leastExposures)
                      || evidence.workingLately < static_cast<std::size_t>(limits.leastRecentExposures);
}

void judgeStandard(LineEvidence& evidence, const VerdictThresholds& limits)
{
    const auto recent = meanOffShare(evidence.counted, limits.mixedExposures);
    const auto last = meanOffShare(evidence.counted, limits.mixedLastExposures);
    evidence.mixed = (recent && *recent > limits.mostOffShare) || (last && *last > limits.mostOffShareLast);
    evidence.offShareLately = std::max(recent.value_or(0), evidence.mixed ? last.value_or(0) : 0.0);
}

void judgeEffort(LineEvidence& evidence, const VerdictThresholds& limits)
{
    int sets = 0;
    int known = 0;
    for (const CountedExposure* exposure : lastWorking(evidence.counted, limits.effortExposures)) {
        sets += exposure->point.workSets;
        known += exposure->effortSets;
    }
    if (sets == 0) return;
    evidence.effortlessShare = 1.0 - static_cast<double>(known) / sets;
    evidence.effortUnknown = evidence.effortlessShare > limits.mostEffortless;
}

// The first day after the last break, or the first day of all.
std::optional<QDate> dayOfReturn(LineEvidence& evidence, const VerdictThresholds& limits)
{
    std::optional<QDate> back;
    for (std::size_t i = 1; i < evidence.counted.size(); ++i) {
        const qint64 days = evidence.counted[i - 1].point.date.daysTo(evidence.counted[i].point.date);
        if (days <= limits.layoffDays) continue;
        back = evidence.counted[i].point.date;
        evidence.layoffDays = days;
    }
    return back;
}

std::vector<DatedEstimate> usableSince(const LineEvidence& evidence, std::optional<QDate> from)
{
    std::vector<DatedEstimate> usable;
    for (const CountedExposure& exposure : evidence.counted) {
        const auto& estimate = evidence.effortUnknown ? exposure.effortless : exposure.estimate;
        if (estimate && !exposure.point.offStandard && (!from || exposure.point.date >= *from))
            usable.push_back({exposure.point.date, *estimate});
    }
    return usable;
}

void takeUsable(LineEvidence& evidence, QDate asOf, const VerdictThresholds& limits)
{
    const auto back = dayOfReturn(evidence, limits);
    evidence.usable = usableSince(evidence, back);
    if (!back) return;
    const double weeksBack = static_cast<double>(back->daysTo(asOf)) / kWeekDays;
    const bool few = evidence.usable.size() < static_cast<std::size_t>(limits.leastExposures);
    evidence.afterLayoff = weeksBack < limits.afterLayoffWeeks || (few && weeksBack < limits.afterLayoffLongestWeeks);
    if (few && !evidence.afterLayoff) evidence.usable = usableSince(evidence, std::nullopt);
}

void takeWindow(LineEvidence& evidence, const VerdictThresholds& limits)
{
    if (evidence.usable.empty()) return;
    const QDate last = evidence.usable.back().date;
    for (std::size_t fromEnd = 1; fromEnd <= evidence.usable.size(); ++fromEnd) {
        const qint64 days = evidence.usable[evidence.usable.size() - fromEnd].date.daysTo(last);
        const bool dense = fromEnd > limits.windowExposures && days > kWeekDays * limits.windowLeastWeeks;
        if (dense || days > kWeekDays * limits.windowMostWeeks) break;
        evidence.window.push_back(evidence.usable[evidence.usable.size() - fromEnd]);
    }
    std::ranges::reverse(evidence.window);
}

void countShares(LineEvidence& evidence, QDate asOf, const VerdictThresholds& limits)
{
    int sets = 0;
    int watched = 0;
    int reps = 0;
    int off = 0;
    for (const CountedExposure& exposure : evidence.counted) {
        if (exposure.point.date <= asOf.addDays(-kWeekDays * limits.windowMostWeeks)) continue;
        sets += exposure.point.workSets;
        watched += exposure.watchedSets;
        reps += exposure.point.reps;
        off += exposure.point.offReps;
    }
    if (sets > 0) evidence.watchedShare = static_cast<double>(watched) / sets;
    if (reps > 0) evidence.countedShare = 1.0 - static_cast<double>(off) / reps;
}

bool isDeloadNow(const LineEvidence& evidence, const std::vector<Row<Block>>& blocks, QDate asOf)
{
    if (!evidence.counted.empty() && evidence.counted.back().point.deload
        && evidence.counted.back().point.date.daysTo(asOf) < kWeekDays)
        return true;
    return std::ranges::any_of(blocks, [&](const Row<Block>& block) {
        const qint64 days = block.value.start.daysTo(asOf);
        const qint64 week = days / kWeekDays;
        return days >= 0 && week < std::ssize(block.value.weeks)
               && block.value.weeks[static_cast<std::size_t>(week)].kind == WeekKind::Deload;
    });
}

}  // namespace

LineEvidence gatherEvidence(const LineRecord& record, const AthleteLog& log, QDate asOf,
                            const VerdictThresholds& limits)
{
    LineEvidence evidence;
    evidence.counted = countExposures(record, log.bodyMass, asOf);
    countFrequency(evidence, asOf, limits);
    judgeStandard(evidence, limits);
    judgeEffort(evidence, limits);
    takeUsable(evidence, asOf, limits);
    takeWindow(evidence, limits);
    countShares(evidence, asOf, limits);
    evidence.deload = isDeloadNow(evidence, log.blocks, asOf);
    return evidence;
}

}  // namespace steelyard
