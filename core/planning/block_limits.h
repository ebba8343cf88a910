// Which limits a block breaks, given what it adds up to: the second half of block_totals.h. For core/planning alone.
#pragma once

#include "core/planning/block_totals.h"

#include <span>

namespace steelyard {

// `totals` with weeks, minutes and complaints filled in.
[[nodiscard]] std::vector<BrokenLimit> brokenLimits(const TotalsInput&, const BlockTotals& totals);
// The muscles that a slot trains; none where the library lacks it.
[[nodiscard]] std::span<const MuscleShare> sharesOf(const Slot&, const Library&);

}  // namespace steelyard
