// The target of one exercise on a sheet, and what it stands on.
//
//   const TargetInput input{variant, comparableBefore(line, date), band, sets, reserve, load, week, date};
//   const SheetTarget target = makeTarget(input, equipment);
//
// Taken in this order: the plan's own load; in a deload week the block's share of the last working load; after three
// weeks or more away from the line one step under the last load; the load that the reading of the record makes likely enough
// (planning/slot_load.h), where there is one; else the plain step of the slot's progression rule. The deload and
// the step after a break are common practice without a published source. Without a comparable record there is no load, and the target says so.
#pragma once

#include "core/sheets/session_sheet.h"

namespace steelyard {

inline constexpr int kLayoffDays = 21;

struct TargetInput {
    const Variant& variant;
    std::vector<Exposure> before;  // oldest first; only those with counted working sets, sets reduced to these
    RepBand band;
    std::optional<int> sets;
    std::optional<double> plannedReserve;
    std::optional<Load> plannedLoad;
    WeekKind week = WeekKind::Normal;
    QDate date;
    QString progression = {};  // as in Slot
    double bodyKg = 0;         // that the loading adds to the load (counting.h)
    bool moreTrained = false;
    bool lowerBody = false;
    const SlotLoad* likely = nullptr;  // at the plan's load where it has one
    RuleSettings settings = {};
    int deloadPercent = Easing().loadPercent;  // of the last working load, in a deload week
};

[[nodiscard]] std::optional<ResultToBeat> resultToBeat(const std::vector<Exposure>& before);
[[nodiscard]] SheetTarget makeTarget(const TargetInput& input, const SheetEquipment& equipment);

}  // namespace steelyard
