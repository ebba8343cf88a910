// What the operations on a block share: laying days out and checking the outcome. For core/planning alone.
#pragma once

#include "core/planning/block_ops.h"

namespace steelyard {

// The outcome of an operation: refused with `nothing` where it changed nothing, else with the first problem that it has.
[[nodiscard]] Result<Block> changedBlock(const Block& before, Block after, const QString& nothing);
// Sorts the days of a week by date; the days themselves must differ.
void sortDays(PlannedWeek& week);
// A superset of one slot is none.
void tidySupersets(PlannedDay& day);
// The training day of a date, made where it was none. Fails outside the block and on a day off.
[[nodiscard]] Result<PlannedDay*> openDay(Block&, QDate date);
// Days from `firstOpen` on, in the weeks from `fromWeek` on, leave the days off: see setDaysOff.
[[nodiscard]] Result<Block> clearOfDaysOff(Block, std::size_t fromWeek, QDate firstOpen);
// Every day of the weeks from `fromWeek` on, so many days later.
void moveWeeks(Block&, std::size_t fromWeek, int days);

}  // namespace steelyard
