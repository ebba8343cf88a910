#include "core/flags/athlete_summary.h"

#include "core/analysis/weekly_sets.h"
#include "core/flags/expected_sessions.h"

#include <algorithm>

namespace steelyard {
namespace {

std::vector<Id<LiftLine>> mainLines(const ReviewSnapshot& snapshot)
{
    struct Trained {
        Id<LiftLine> line;
        std::ptrdiff_t times = 0;
    };
    std::vector<Trained> trained;
    const QDate from = snapshot.asOf.addDays(-7 * kRecentWeeks);
    for (const SnapshotLine& line : snapshot.lines) {
        if (!line.recent) continue;
        const auto isRecent = [&](const CountedExposure& exposure) { return exposure.point.date >= from; };
        trained.push_back({line.record->id, std::ranges::count_if(line.counted, isRecent)});
    }
    std::ranges::stable_sort(trained, std::ranges::greater(), &Trained::times);
    std::vector<Id<LiftLine>> lines;
    for (const Trained& each : trained)
        if (lines.size() < kMostMainLines) lines.push_back(each.line);
    return lines;
}

std::vector<WeeklyMuscleSets> weeklyMuscles(const ReviewSnapshot& snapshot)
{
    const AthleteLog& log = snapshot.log;
    auto sums = muscleSets(log, snapshot.asOf.addDays(1 - 7 * kSummarySetWeeks), snapshot.asOf);
    std::vector<WeeklyMuscleSets> muscles;
    const auto add = [&](Id<Muscle> muscle, double sets, std::optional<MuscleAim> aim) {
        muscles.push_back({muscle, log.muscleName(muscle), sets / kSummarySetWeeks, aim});
    };
    for (const MuscleAim& aim : log.athlete.value.aims) {
        const auto sum = sums.extract(aim.muscle);
        add(aim.muscle, sum ? sum.mapped() : 0, aim);
    }
    const auto wanted = static_cast<std::ptrdiff_t>(muscles.size());
    for (const auto& [muscle, sum] : sums) add(muscle, sum, {});
    std::ranges::stable_sort(muscles.begin() + wanted, muscles.end(), std::ranges::greater(),
                             &WeeklyMuscleSets::perWeek);
    return muscles;
}

void summariseDiscomfort(const ReviewSnapshot& snapshot, AthleteSummary& summary)
{
    std::array<JointDiscomfort, kJointCount> highest;
    const QDate from = snapshot.asOf.addDays(-7 * kSummaryDiscomfortWeeks);
    for (const LineRecord& line : snapshot.log.lines)
        for (const Exposure& exposure : line.exposures) {
            if (exposure.date <= from || exposure.date > snapshot.asOf) continue;
            for (const auto& row : EnumText<Joint>::table) {
                const auto rating = exposure.rating.discomfort.at(static_cast<std::size_t>(row.value));
                if (!rating) continue;
                summary.discomfortRated = true;
                JointDiscomfort& known = highest.at(static_cast<std::size_t>(row.value));
                if (std::pair(*rating, exposure.date) > std::pair(known.rating, known.date))
                    known = {row.value, *rating, exposure.date};
            }
        }
    for (const JointDiscomfort& joint : highest)
        if (joint.rating > 0) summary.joints.push_back(joint);
    std::ranges::stable_sort(summary.joints, std::ranges::greater(), &JointDiscomfort::rating);
}

std::array<AttendedWeek, kAttendanceWeeks> attendedWeeks(const ReviewSnapshot& snapshot)
{
    std::array<AttendedWeek, kAttendanceWeeks> weeks;
    QDate last = snapshot.asOf;
    for (auto week = weeks.rbegin(); week != weeks.rend(); ++week, last = last.addDays(-7))
        *week = {last, sessionsBetween(snapshot.log, last.addDays(-7), last),
                 expectedSessions(snapshot.log, last.addDays(-7), last)};
    return weeks;
}

}  // namespace

AthleteSummary summarise(const ReviewSnapshot& snapshot)
{
    AthleteSummary summary;
    summary.mainLines = mainLines(snapshot);
    summary.muscles = weeklyMuscles(snapshot);
    summariseDiscomfort(snapshot, summary);
    summary.weeks = attendedWeeks(snapshot);
    return summary;
}

}  // namespace steelyard
