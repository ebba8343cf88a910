// What an editor does to a block, each as a pure function: the block as it will be, or why not.
//
//   STEELYARD_TRY(Block next, changeSets(block, places, +1));
//   next = keepingPast(block, std::move(next), today) ...
//
// Invariants, where the block given had them: what comes back is valid (core/domain/block.h) and laid out well
// (block_places.h); a lift stands once a day, because two slots of one lift would be one exposure; no training day lies in days
// off that are ahead; a superset has two slots or more. Undoing needs no inverse here: the history keeps what a change replaced.
//
// A change that could change nothing fails with Invalid and says why, as does one that would break an invariant. Sentences are
// for the coach. Places are those of the block given.
#pragma once

#include "core/base/result.h"
#include "core/planning/block_places.h"

namespace steelyard {

inline constexpr int kMostSlotSets = 30;
inline constexpr int kMostBandReps = 100;
inline constexpr int kMostReserve = 10;
inline constexpr int kMostRestSeconds = 1800;
inline constexpr std::size_t kMostBlockWeeks = 52;

// `after`, unless days before `firstOpen` would change, or the weeks that such days stand in: what has passed stays as planned.
[[nodiscard]] Result<Block> keepingPast(const Block& before, Result<Block> after, QDate firstOpen);

// --- slots: block_ops.cpp ---

// The slots go to a day, which becomes a training day where it was none; before the slot of that number, else to the end.
[[nodiscard]] Result<Block> addSlots(Block, const std::vector<Slot>&, QDate day,
                                     std::optional<std::size_t> before = std::nullopt);
// The same in every later week of the block on that weekday; in easier weeks with what the block's easing leaves. Later weeks that
// have the lift already on that day keep theirs.
[[nodiscard]] Result<Block> addSlotsWeekly(Block, const std::vector<Slot>&, QDate day,
                                           std::optional<std::size_t> before = std::nullopt);
[[nodiscard]] Result<Block> removeSlots(Block, const PlanPlaces&);
// Each slot so many days on (back: below 0). A day that gave its last slot away and has no title is a rest day then.
[[nodiscard]] Result<Block> moveSlots(Block, const PlanPlaces&, int days,
                                      std::optional<std::size_t> before = std::nullopt);
[[nodiscard]] Result<Block> copySlots(Block, const PlanPlaces&, int days,
                                      std::optional<std::size_t> before = std::nullopt);
// Up (-1) or down (+1) within the day.
[[nodiscard]] Result<Block> stepSlots(Block, const PlanPlaces&, int by);
// Another lift at these places; a load that was planned for the one before is dropped.
[[nodiscard]] Result<Block> replaceLift(Block, const PlanPlaces&, const LiftLine& to);
[[nodiscard]] Result<Block> replaceLiftFrom(Block, const LiftLine& from, const LiftLine& to, std::size_t fromWeek);

// --- doses: block_doses.cpp ---

[[nodiscard]] Result<Block> changeSets(Block, const PlanPlaces&, int by);
[[nodiscard]] Result<Block> setSets(Block, const PlanPlaces&, int sets);
[[nodiscard]] Result<Block> setBand(Block, const PlanPlaces&, const RepBand&);
[[nodiscard]] Result<Block> setReserve(Block, const PlanPlaces&, std::optional<Decimal>);
[[nodiscard]] Result<Block> setRest(Block, const PlanPlaces&, std::optional<int> seconds);
// A load that is named is the coach's and stays; absent: from the record again.
[[nodiscard]] Result<Block> setLoad(Block, const PlanPlaces&, std::optional<Load>);
[[nodiscard]] Result<Block> setLoadLocked(Block, const PlanPlaces&, bool locked);
[[nodiscard]] Result<Block> setProgression(Block, const PlanPlaces&, const QString& rule);
[[nodiscard]] Result<Block> setNote(Block, const PlanPlaces&, const QString& note);
// Everything but the lift, as it was typed on one line.
[[nodiscard]] Result<Block> setDose(Block, const PlanPlaces&, const Slot& typed);
// The slots of each day together in turns; where they are one superset already, each by itself again.
[[nodiscard]] Result<Block> toggleSuperset(Block, const PlanPlaces&);
// From `first` in the week named to `last` in the last normal week, evenly, in halves unless both are whole: 3, 2, 2, 1.
[[nodiscard]] Result<Block> rampReserve(Block, std::size_t fromWeek, Decimal first, Decimal last);
// A slot as an easier week has it: sets rounded up, one at least; load by share only where the coach has fixed it, else left to the
// forecast.
[[nodiscard]] Slot easedSlot(const Slot&, const Easing&);

// --- weeks: block_weeks.cpp ---

// An easier week by the block's easing; a test week has one set of each lift to kReserveNearFailure; a normal week takes sets, reserve
// and load of each lift from the nearest normal week, where that has it.
[[nodiscard]] Result<Block> setWeekKind(Block, std::size_t week, WeekKind);
// The copy stands after it; the weeks behind move on.
[[nodiscard]] Result<Block> duplicateWeek(Block, std::size_t week);
// Empty days on the weekdays of the week before, else of the one behind.
[[nodiscard]] Result<Block> insertWeek(Block, std::size_t at);
[[nodiscard]] Result<Block> removeWeek(Block, std::size_t week);
// Planned days from `from` on, so many days later (below 0: sooner). Where nothing is planned before, the block starts with them; in
// a running block they stay in their weeks, or move on by whole weeks.
[[nodiscard]] Result<Block> shiftDays(Block, QDate from, int days);
[[nodiscard]] Result<Block> setStart(Block, QDate start);
// 1 is Monday. The sessions of each week go to these days in order; days more than sessions are empty training days.
[[nodiscard]] Result<Block> setWeekdays(Block, const std::vector<int>& weekdays, std::size_t fromWeek);
// Sessions ahead that fall into the days off go to the nearest free day of their week; a week that lies wholly in them is passed over:
// an empty one stands there and the rest moves on.
[[nodiscard]] Result<Block> setDaysOff(Block, std::vector<DaysOff>, QDate firstOpen);
// The same block once more on the same weekdays, without loads and days off.
[[nodiscard]] Result<Block> repeatBlock(Block, const QString& name, QDate start);

struct NewBlock {
    Id<Athlete> athlete;
    QString name;
    QString aim;
    QDate start;
    std::size_t weeks = 5;
    std::vector<int> weekdays;
    bool lastIsDeload = true;
    std::vector<DaysOff> daysOff = {};
};
// Weeks of empty training days.
[[nodiscard]] Result<Block> blankBlock(const NewBlock&);

}  // namespace steelyard
