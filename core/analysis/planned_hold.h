// Whether the plan means a lift line to stay where it is for a while: then no rise is nothing to speak of.
//
//   if (isHoldPlanned(record.line, log.blocks, day)) ...
//
// A hold is planned in a test week, and where the line's slots ask for the same load, sets, repetitions and reserve in the
// day's week and in one next to it. A wide band leaves room for more repetitions at one load, which is progress; so a hold
// needs a band of kHoldBand repetitions at most. Both are our convention.
//
// Pure; no failures. A slot without a load plans none: the sheet takes it from the record.
#pragma once

#include "core/domain/block.h"

namespace steelyard {

inline constexpr int kHoldBand = 2;

[[nodiscard]] bool isHoldPlanned(const LiftLine&, const std::vector<Row<Block>>&, QDate day);

}  // namespace steelyard
