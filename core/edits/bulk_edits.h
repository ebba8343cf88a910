// Changing many sets at once: first a plan of what would change, as a value that can be looked at, then one edit of it.
//
//   const MovePlan plan = planMove(log, library, {.line = wrong, .from = day, .variant = v, .grip = g, .standard = s}, today);
//   if (plan.problems.empty()) history.perform(moveSets(plan));
//
//   move     a line's sets from day to day go to another line of the same lifter: another grip, variant or standard. From a day
//            on, without an end, it splits the line in two. Ratings and what the sets said before go with them; where nothing
//            stays behind, so do the decisions about the line. A standard may be new: it is agreed with this lifter alone and
//            takes over the old one's cues where the variant is the same. Planned slots after today follow when asked to.
//   shift    sessions go to other days; one that comes upon a session that stays is joined to it, unless a set clashes.
//   rename   an exercise, variant, grip or standard gets another name, for everybody who has it.
//
// Planning is pure (the rename's counts apart, which need the whole book). A plan with problems is not to be performed. The log
// is to be read without an end, so that a set of a mistyped future day is among those that move. An edit checks that it finds
// what its plan counted, else Conflict; nothing is changed then.
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/edits/edits.h"

namespace steelyard {

enum class BulkTrouble {
    NothingThere,     // no set in that stretch
    SameLine,         // they stand there already
    ForeignStandard,  // the standard is of another variant or another lifter
    SetsClash,        // both lines, or both sessions, have a set of the same number on `date`
    RatingsClash,     // both are rated on `date`
    IntoTheFuture,    // `date` would lie after today
    NoDays,           // a shift by nothing
    NameNeeded,
    SameName,
    NameTaken,
};

struct BulkProblem {
    BulkTrouble kind = BulkTrouble::NothingThere;
    QDate date = {};
    friend bool operator==(const BulkProblem&, const BulkProblem&) = default;
};

struct MoveWish {
    Id<LiftLine> line;
    std::optional<QDate> from = {};  // absent: from the first
    std::optional<QDate> to = {};    // absent: to the last
    Id<Variant> variant;
    Id<Grip> grip;
    std::optional<Id<RepStandard>> standard =
        {};  // absent: the one named below, made if the lifter has none of that name
    QString standardName = {};
    bool planToo = false;  // slots after today as well
};

struct LineCount {
    LiftLine line;
    int sessions = 0;
    int sets = 0;
    int sessionsAfter = 0;
    int setsAfter = 0;
    friend bool operator==(const LineCount&, const LineCount&) = default;
};

// A planned slot, by its place in MovePlan::blocks.
struct SlotPlace {
    std::size_t block = 0;
    std::size_t week = 0;
    std::size_t day = 0;
    std::size_t slot = 0;
    friend bool operator==(const SlotPlace&, const SlotPlace&) = default;
};

struct MovePlan {
    Id<LiftLine> source;
    LiftLine target;  // its standard is the old one's while `newStandard` isn't made
    std::optional<RepStandard> newStandard = {};
    std::vector<QDate> days = {};  // of the sessions, oldest first
    int sets = 0;
    int ratings = 0;
    int decisions = 0;                     // that follow
    bool otherLoading = false;             // the number means something else there: total on the bar, one hand
    std::vector<LineCount> lines = {};     // the old one, the new one
    int plannedSlots = 0;                  // after today that name the old line and could follow
    std::vector<BlockChange> blocks = {};  // with those slots changed; empty when they are to stay
    std::vector<SlotPlace> following = {};
    std::vector<BulkProblem> problems = {};
};

// The wished line is one of the log's.
[[nodiscard]] MovePlan planMove(const AthleteLog&, const Library&, const MoveWish&, QDate today);
[[nodiscard]] std::unique_ptr<Edit> moveSets(const MovePlan& plan);

struct ShiftWish {
    std::optional<QDate> from = {};
    std::optional<QDate> to = {};
    int days = 0;  // negative: earlier
};

struct DayMove {
    QDate before;
    QDate after;
    int sets = 0;
    bool joins = false;  // a session is there
    friend bool operator==(const DayMove&, const DayMove&) = default;
};

struct ShiftPlan {
    Id<Athlete> athlete;
    std::vector<DayMove> moves;  // oldest first
    std::vector<BulkProblem> problems = {};
};

[[nodiscard]] ShiftPlan planShift(const AthleteLog&, const ShiftWish&, QDate today);
[[nodiscard]] std::unique_ptr<Edit> shiftSessions(const ShiftPlan& plan);

enum class RenameKind { Exercise, Variant, Grip, Standard };

struct RenameWish {
    RenameKind kind = RenameKind::Exercise;
    std::int64_t id = 0;  // of the row that the kind names
    QString name;
};

struct RenamePlan {
    RenameWish wish;  // its name as it will be stored
    QString before;
    int lines = 0;  // lift lines that it touches
    int lifters = 0;
    int plannedSlots = 0;
    std::vector<BulkProblem> problems = {};
};

[[nodiscard]] Result<RenamePlan> planRename(Database&, const Library&, const RenameWish&);
[[nodiscard]] std::unique_ptr<Edit> renameInLibrary(const RenamePlan& plan);

}  // namespace steelyard
