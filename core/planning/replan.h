// What a coach's action does to the weeks ahead: the block as it will be, with every slot before and after.
//
//   const ReplanInput input{log, library, lift, QStringLiteral("drop_set"), today};
//   const Replan plan = replan(input, {.scope = ReplanScope::NextWeek});
//   plan.outcome == ReplanOutcome::Changed;   plan.changes[0].before.sets == 3;   plan.changes[0].after.sets == 2;
//
// Only days after `today` are touched, and only in the block that has the next planned day. "Next week" is seven days from
// that day on, whenever in the week the coach looks. Easier and test weeks keep their sets, reserve and load.
//
//   hold_load       the load of the last comparable session
//   drop_set        one set less, down to one            add_set    one more
//   harder_sets     one repetition less in reserve, down to none; kReserveNearFailure where nothing was planned
//   change_band     the band                             change_grip   the grip, and with it the lift line
//   change_variant  the variant with its own standard; grip and standard as the lifter last did it, else as is usual
//   keep_line       other ways of the same exercise give way to this line
//   move_day        to another planned day of the same plan week
//   deload          the next plan week that hasn't begun becomes an easier one: half the sets, rounded up, and
//                   kEasierReserve more in reserve (common practice without one source), loads left to the sheet
//
// A load that was planned for another band, grip or variant is dropped: the sheet takes it from the new line's record.
// Two slots of one line on one day would be one exposure, so an action that would make them leaves that slot as it is.
// Invariants: the changed block is valid where the block was; weeks, days and slots that no row names are equal. Pure; no
// failures: what can't land in the plan says why, and stands on the next sheet instead (ReplanOutcome).
#pragma once

#include "core/analysis/athlete_log.h"

namespace steelyard {

inline constexpr int kReserveNearFailure = 1;
inline constexpr int kEasierReserve = 2;
inline constexpr int kUsualReserve = 2;  // taken as planned where a slot says nothing, to plan an easier week from

enum class ActionPlace {
    Plan,   // changes slots
    Sheet,  // is for lifter and coach to read at the next session
    Desk,   // is done elsewhere; the decision alone is kept
};
// An unknown word (a newer program's) is for the desk.
[[nodiscard]] ActionPlace placeOf(QStringView action);

enum class ReplanScope { NextWeek, RestOfBlock };

struct ReplanChoice {
    ReplanScope scope = ReplanScope::NextWeek;
    // One of these where the action needs it; absent: the first of choicesFor().
    std::optional<Id<Grip>> grip = {};
    std::optional<Id<Variant>> variant = {};
    std::optional<RepBand> band = {};
    std::optional<int> weekday = {};  // 1 is Monday
    friend bool operator==(const ReplanChoice&, const ReplanChoice&) = default;
};

struct ReplanInput {
    const AthleteLog& log;
    const Library& library;
    std::optional<LiftLine> lift;  // absent: every exercise
    QString action;
    QDate today;
};

enum class ReplanOutcome {
    Changed,          // the block changes
    NoBlock,          // nothing is planned after today
    NotPlanned,       // the lift isn't in the days that would change
    NothingToChange,  // it is there, and is so already or can't be otherwise
    OnSheet,          // the action is no change of the plan
    AtDesk,
};

struct PlannedChange {
    QDate dayBefore;
    Slot before;
    QDate dayAfter;
    Slot after;
    friend bool operator==(const PlannedChange&, const PlannedChange&) = default;
};

struct Replan {
    ReplanOutcome outcome = ReplanOutcome::NoBlock;
    std::optional<Id<Block>> id;         // Changed: of the block
    std::optional<Block> block;          // Changed: as it will be
    std::vector<PlannedChange> changes;  // by day, then by place in the day

    // Whether the decision is for the next sheet, because the plan can't carry it.
    [[nodiscard]] bool isForSheet() const
    {
        return outcome != ReplanOutcome::Changed && outcome != ReplanOutcome::AtDesk;
    }
};

[[nodiscard]] Replan replan(const ReplanInput& input, const ReplanChoice& choice);

// What can be chosen for the action, the sensible one first, each with its one field set; empty: nothing to choose.
//   bands     those in which this lifter rated the lift better than in the present one, the next of them first; the next
//             higher one, the next lower one, the others
//   grips     those that the lifter used for this exercise, then those of the same orientation, then the others; a straight
//             bar can't be held otherwise than supinated or pronated
//   variants  of the same exercise, shown in the library and with a standard; those that the lifter did come first
//   weekdays  of the planned days, the farthest first; of a lift that loads the back or is swung, those first that put it least
//             beside days that need the back
[[nodiscard]] std::vector<ReplanChoice> choicesFor(const ReplanInput& input);
[[nodiscard]] bool hasScope(QStringView action);
[[nodiscard]] ReplanScope usualScope(QStringView action);
// Whether the action is about one lift: choosing every exercise makes no sense.
[[nodiscard]] bool needsLift(QStringView action);

// The block with the next planned day after `today`; null: none.
[[nodiscard]] const Row<Block>* blockAhead(const AthleteLog& log, QDate today);
// The lifts that it plans after today, each once, in the order of the plan.
[[nodiscard]] std::vector<LiftLine> liftsAhead(const AthleteLog& log, QDate today);
// How a lift would go on with another variant: as the lifter last did it, else with the usual grip and the usual standard.
// nullopt: the variant has no standard.
[[nodiscard]] std::optional<LiftLine> liftWithVariant(const ReplanInput& input, Id<Variant> variant);

}  // namespace steelyard
