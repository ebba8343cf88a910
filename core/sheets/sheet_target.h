// The target of one exercise on a sheet, and what it stands on.
//
//   const TargetInput input{variant, comparableBefore(line, date), band, sets, reserve, load, week, date};
//   const SheetTarget target = makeTarget(input, equipment);
//
// Taken in this order: the plan's own load; in a deload week about nine tenths of the last working load; after three
// weeks or more away from the line one step under the last load; else the double-progression step. These last two are
// common practice without a published source. Without a comparable record there is no load, and the target says so.
#pragma once

#include "core/sheets/session_sheet.h"

namespace steelyard {

inline constexpr int kLayoffDays = 21;
inline constexpr int kDeloadPercent = 90;

struct TargetInput {
    const Variant& variant;
    std::vector<Exposure> before;  // oldest first; only those with counted working sets, sets reduced to these
    RepBand band;
    std::optional<int> sets;
    std::optional<double> plannedReserve;
    std::optional<Load> plannedLoad;
    WeekKind week = WeekKind::Normal;
    QDate date;
};

[[nodiscard]] std::optional<ResultToBeat> resultToBeat(const std::vector<Exposure>& before);
[[nodiscard]] SheetTarget makeTarget(const TargetInput& input, const SheetEquipment& equipment);

}  // namespace steelyard
