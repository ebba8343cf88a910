// What a roster says of one lifter beside flags and verdicts: the lines they train most, sets a week by muscle, the
// highest discomfort by joint, and how often they came. Made in the same pass as the review, so that nothing is read again.
//
//   const AthleteSummary summary = summarise(snapshot);
//   summary.weeks.back().came   // sessions in the seven days up to the day of the review
//
// Pure; no failures. Small: some dozens of numbers a lifter.
#pragma once

#include "core/flags/snapshot.h"

#include <array>

namespace steelyard {

inline constexpr std::size_t kMostMainLines = 4;
inline constexpr int kSummarySetWeeks = 3;         // sets are a mean of
inline constexpr int kSummaryDiscomfortWeeks = 4;  // that the highest rating is sought in
inline constexpr std::size_t kAttendanceWeeks = 8;

struct WeeklyMuscleSets {
    Id<Muscle> muscle;
    QString name;
    double perWeek = 0;
    std::optional<MuscleAim> aim;  // absent: the coach wants nothing in particular
};

struct JointDiscomfort {
    Joint joint = Joint::Elbow;
    int rating = 0;  // 1-10
    QDate date;      // when it was last rated that high
};

struct AttendedWeek {
    QDate lastDay;
    int came = 0;
    std::optional<double> expected;  // absent: nothing to expect by
};

struct AthleteSummary {
    std::vector<Id<LiftLine>> mainLines;               // trained most often in the last weeks, most first
    std::vector<WeeklyMuscleSets> muscles;             // with an aim first, then most sets first
    std::vector<JointDiscomfort> joints;               // rated above 0, highest first
    bool discomfortRated = false;                      // at all: nobody asked is not the same as nothing felt
    std::array<AttendedWeek, kAttendanceWeeks> weeks;  // oldest first
};

[[nodiscard]] AthleteSummary summarise(const ReviewSnapshot&);

}  // namespace steelyard
