// Where things stand in a block, and which of them belong together over the weeks.
//
//   const PlanPlace place{.week = 0, .day = 1, .slot = 2};
//   slotAt(block, place)->sets;   dateOf(block, place);
//   withLaterWeeks(block, {place}, WeekScope::ThisAndLater)       // the same lift on the same weekday, week after week
//
// A block is laid out well when every planned day lies in the seven days of its week, the days of a week stand by date, and
// no date stands twice. core/planning/block_ops.h keeps a block so. Pure; no failures.
#pragma once

#include "core/domain/block.h"

#include <compare>

namespace steelyard {

inline constexpr int kDaysOfPlanWeek = 7;

struct PlanPlace {
    std::size_t week = 0;
    std::size_t day = 0;
    std::size_t slot = 0;
    friend auto operator<=>(const PlanPlace&, const PlanPlace&) = default;
};
using PlanPlaces = std::vector<PlanPlace>;

struct DayPlace {
    std::size_t week = 0;
    std::size_t day = 0;
    friend auto operator<=>(const DayPlace&, const DayPlace&) = default;
};

enum class WeekScope { ThisWeek, ThisAndLater };

// Null outside the block.
[[nodiscard]] const Slot* slotAt(const Block&, const PlanPlace&);
[[nodiscard]] Slot* slotAt(Block&, const PlanPlace&);
// Invalid outside the block.
[[nodiscard]] QDate dateOf(const Block&, const PlanPlace&);
[[nodiscard]] QDate firstDayOf(const Block&, std::size_t week);
// The day after the last week.
[[nodiscard]] QDate endOf(const Block&);
[[nodiscard]] std::optional<DayPlace> dayOn(const Block&, QDate date);
[[nodiscard]] bool isLaidOutWell(const Block&);

[[nodiscard]] LiftLine liftOf(const Block&, const Slot&);
[[nodiscard]] bool isSameLift(const Slot& a, const Slot& b);
// The slot of a lift on a date; absent: it isn't planned there.
[[nodiscard]] std::optional<PlanPlace> placeOf(const Block&, QDate date, const Slot& lift);

// The places themselves, and for ThisAndLater each lift on the same weekday of every later week. Where `normalOnly`, easier and test
// weeks are passed over unless a place was named in them. Sorted, each once.
[[nodiscard]] PlanPlaces withLaterWeeks(const Block&, const PlanPlaces&, WeekScope, bool normalOnly = false);
// Every place of a lift from a week on.
[[nodiscard]] PlanPlaces placesOf(const Block&, const LiftLine& lift, std::size_t fromWeek = 0);
[[nodiscard]] PlanPlaces placesOfWeek(const Block&, std::size_t week);

}  // namespace steelyard
