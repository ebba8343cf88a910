// What the Block place shows at a time: a lifter's record, one of their blocks, what it adds up to, what was done of it,
// what is fixed in it, and the week in sight. One value that
// every part of the page is handed when something has changed; none of them changes it.
//
//   grid->show(shown);   shown->week().kind;   shown->isOpen(date);
#pragma once

#include "core/book/plan_record.h"
#include "core/planning/block_totals.h"
#include "core/planning/planned_beside_done.h"
#include "ui/pages/block/block_pins.h"

#include <memory>

namespace steelyard {

struct BlockShown {
    std::shared_ptr<const PlanRecord> record;
    Row<Block> row;
    BlockTotals totals;
    PlannedBesideDone done;  // of the record that stands here
    BlockPins pins;          // for the next proposal
    std::size_t weekIndex = 0;
    QDate today;
    QDate firstOpen;  // days before have passed, or have their session in the book
    bool editable = false;

    [[nodiscard]] const Block& block() const { return row.value; }
    [[nodiscard]] const Library& library() const { return record->library; }
    [[nodiscard]] const AthleteLog& log() const { return record->log; }
    [[nodiscard]] MassUnit unit() const { return record->log.athlete.value.unit; }
    [[nodiscard]] bool hasWeek() const { return weekIndex < row.value.weeks.size(); }
    [[nodiscard]] const PlannedWeek& week() const { return row.value.weeks[weekIndex]; }
    [[nodiscard]] QDate dateOfColumn(int column) const { return firstDayOf(row.value, weekIndex).addDays(column); }
    [[nodiscard]] bool isPinned(const PlanPlace& place) const { return pins.has(row.value, place); }
    [[nodiscard]] bool isOpen(QDate date) const { return editable && date >= firstOpen; }
};
using BlockShownPtr = std::shared_ptr<const BlockShown>;

}  // namespace steelyard
