// What the weeks of a block add up to, and which limits they break.
//
//   const BlockTotals totals = blockTotals({block, log, library, today});
//   totals.weeks[0].muscles[0].sets      == 5.5              // fractional sets of the week
//   totals.broken[0].sentence            == "Triceps: 5.5 sets, 8 to 16 are wanted."
//
// Sets are counted as core/analysis/weekly_sets.h counts what was done: 1 for the target, the share for a helper. The band is the
// block's aim for the muscle, else the athlete's; without either a muscle has no band. Minutes: session_time.h. Easier and test weeks
// aren't held against the low end; weeks without a session, and days and weeks that have passed, break nothing.
//
// Limits, each with where: too few and too many sets (a week, a muscle); a long day (minutes); back loading of a day and on the day
// after one with high loading; less than kLeastDaysBetween between two days that have a muscle as their target; a joint under
// complaint; a day off; one lift twice on a day. A joint is under complaint where it was rated above kSafeDiscomfort in the last kComplaintWeeks,
// and a slot touches it where that rating was given for the same exercise: the library doesn't say what strains a joint, the
// lifter did. It records and reminds; what it is, only somebody who examines the joint can say.
//
// Units: sets, minutes, weeks from 0. Sentences are for the coach, without a place: whoever shows them says where. Pure; no failures.
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/base/wording.h"
#include "core/planning/block_places.h"

namespace steelyard {

// A day of high back loading is no day to load the back again on the next; our conventions.
inline constexpr double kMostBackSets = 10;  // high counts 1 a set, some a half
inline constexpr double kSomeBackShare = 0.5;
inline constexpr int kLeastDaysBetween = 2;  // 48 hours between sessions of a muscle: common practice
inline constexpr int kComplaintWeeks = 3;

enum class LimitKind {
    FewSets,
    ManySets,
    LongDay,
    BackLoading,
    ShortSpacing,
    JointComplaint,
    DayOff,
    SameLiftTwice,
};

struct BrokenLimit {
    LimitKind kind = LimitKind::FewSets;
    std::size_t week = 0;
    std::optional<std::size_t> day = {};
    std::optional<std::size_t> slot = {};
    std::optional<Id<Muscle>> muscle = {};
    QString sentence;
    friend bool operator==(const BrokenLimit&, const BrokenLimit&) = default;
};

struct MuscleTotal {
    Id<Muscle> muscle;
    double sets = 0;
    std::optional<int> low;
    std::optional<int> high;
    friend bool operator==(const MuscleTotal&, const MuscleTotal&) = default;
};

struct DayTotal {
    QDate date;
    int sets = 0;
    double minutes = 0;
    double backSets = 0;
    bool hasHighBack = false;
    friend bool operator==(const DayTotal&, const DayTotal&) = default;
};

struct WeekTotal {
    int sets = 0;
    std::vector<MuscleTotal> muscles;  // in the library's order; those with sets or a band
    std::vector<DayTotal> days;        // as in the block
    friend bool operator==(const WeekTotal&, const WeekTotal&) = default;
};

// The worst rating of a joint lately, and for which exercise.
struct JointComplaint {
    Joint joint = Joint::Elbow;
    int rating = 0;
    QDate date;
    Id<Exercise> exercise;
    friend bool operator==(const JointComplaint&, const JointComplaint&) = default;
};

struct BlockTotals {
    std::vector<WeekTotal> weeks;
    std::optional<int> minutesWanted;        // a day: the block's, else the athlete's
    std::vector<JointComplaint> complaints;  // by joint, then exercise
    std::vector<BrokenLimit> broken;         // by week, then day, then slot; those of a whole week first
};

struct TotalsInput {
    const Block& block;
    const AthleteLog& log;
    const Library& library;
    QDate today;
    Wording wording = {};
};

[[nodiscard]] BlockTotals blockTotals(const TotalsInput&);
[[nodiscard]] std::vector<JointComplaint> complaintsOf(const AthleteLog&, QDate today);

}  // namespace steelyard
