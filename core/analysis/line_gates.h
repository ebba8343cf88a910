// The plain facts that come before any reading: whether a record is long enough, comparable, and about what it seems.
//
//   const LineGates gates = gatesAt(counted, log.blocks, sunday, thresholds);
//   if (gates.mixed) ...   // can't tell, whatever the numbers say
//
// Pure; no failures. Nothing after `day` is looked at.
#pragma once

#include "core/analysis/counting.h"
#include "core/analysis/verdict_thresholds.h"

#include <span>

namespace steelyard {

struct LineGates {
    std::size_t exposures = 0;        // up to the day, deloads too
    std::size_t exposuresLately = 0;  // in the last weeks
    double weeksOfRecord = 0;         // from the first one to the day
    bool tooFew = false;
    bool mixed = false;
    double offShareLately = 0;  // mean over the watched ones of the last exposures
    bool effortUnknown = false;
    double effortlessShare = 0;  // of the working sets of the last exposures
    bool afterLayoff = false;
    qint64 layoffDays = 0;     // of the last break, if afterLayoff
    bool deload = false;       // the last session or the planned week
    bool plannedHold = false;  // planned_hold.h
    friend bool operator==(const LineGates&, const LineGates&) = default;
};

// `counted` is oldest first and may go on after the day. `line`: whose plan is looked at; absent: no hold is planned for it.
[[nodiscard]] LineGates gatesAt(std::span<const CountedExposure> counted, const std::vector<Row<Block>>& blocks,
                                QDate day, const VerdictThresholds&, const std::optional<LiftLine>& line = {});

// Weeks run from Monday; the number of the one a day lies in grows by one a week.
[[nodiscard]] qint64 weekOf(QDate);
[[nodiscard]] QDate lastDayOfWeek(qint64 week);

}  // namespace steelyard
