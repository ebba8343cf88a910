// A block proposed for a lifter, from the record, the library and the gym.
//
//   ProposalWishes wishes{.today = today, .from = monday, .weeks = 5};
//   const auto proposal = proposeBlock(log, library, &gym, wishes, progress);
//   proposal->block;                      // loads absent: another part fills them in
//   proposal->week[0].why                 // "Stays: it is progressing. ..."
//   proposal->unmet                       // "Chest: 6 of at least 8 sets a week. In the way: the minutes of a day."
//
// One week is solved (solver/plan_problem.h) and repeated: sets begin a little lower and end a little higher where the bands,
// the minutes and the days allow it; reserve goes from kFirstReserve down to kLastReserve; from kLeastWeeksWithDeload weeks on
// the last one is a deload by the easing asked for. What is chosen from, and how much each is worth: proposal/proposal_choices.h.
//   days      as many as asked for, else the lifter's, else as many as the record shows; on the weekdays of the record
//   aims      the wishes', else the lifter's; a muscle without one is kept about where the record has it
//   days off  a session of one moves to the nearest day of its plan week on which no limit is broken, else it is left out
//
// A trial that runs keeps its lift and has its sessions in the block; what a trial chose is preferred, what hurt in one is left out.
//
// Units: sets, minutes. The same record and wishes give the same block. The program never says what a discomfort is; it
// spares what was rated high and says so. Failures: Invalid (wishes out of range, nothing to choose from), Cancelled.
// Sources: the ramps of reserve and sets are common practice without one source.
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/base/wording.h"
#include "core/planning/solver/plan_obstacles.h"

namespace steelyard {

inline constexpr int kMostProposalWeeks = 16;
inline constexpr int kLeastWeeksWithDeload = 4;
inline constexpr int kFirstReserve = 3;
inline constexpr int kLastReserve = 1;
inline constexpr int kUsualTrainingDays = 3;  // where neither wishes, lifter nor record say
inline constexpr int kUsualTrainingMinutes = 60;

// Stays exactly as it is, on this weekday of every week that isn't a deload.
struct PinnedSlot {
    int weekday = 1;
    Slot slot;
};

struct ProposalWishes {
    QDate today;  // what is known: nothing later is read
    QDate from;   // the block's first day
    int weeks = 5;
    std::optional<int> daysPerWeek = {};
    std::optional<int> minutesPerDay = {};
    std::vector<MuscleAim> aims = {};
    std::vector<DaysOff> daysOff = {};
    Easing easing = {};
    std::vector<Id<LiftLine>> progressing = {};  // lines to keep
    std::vector<PinnedSlot> pinned = {};
    PlanSolveOptions search = {};
    Wording wording = {};
};

struct ProposedSlot {
    int weekday = 1;
    LiftLine lift;
    int sets = 0;
    QString why;  // a sentence or two for the coach
    friend bool operator==(const ProposedSlot&, const ProposedSlot&) = default;
};

struct BlockProposal {
    Block block;
    std::vector<ProposedSlot> week;  // the week that repeats, by day, in the order of the session
    QStringList cautions;            // joints that were rated high or noticeable
    QStringList unmet;               // what could not be met, and what is in the way
    PlanAnswer answer;
};

[[nodiscard]] Result<BlockProposal> proposeBlock(const AthleteLog&, const Library&, const Gym*, const ProposalWishes&,
                                                 const Progress&);

}  // namespace steelyard
