// A block's shape without lifter and loads, kept to start other blocks from.
//
//   STEELYARD_TRY(const BlockTemplate shape, templateOf(block, tr("Four days")));
//   STEELYARD_TRY(const Block next, blockOf(shape, athlete, tr("Spring"), monday));
//
// Days keep their weekday within the week they stand in; a template's weeks run from Monday (kTemplateStart). Weeks that were passed over
// for days off are left out. A superset, a progression and a note stay; loads go.
// Failures: Invalid, where the name or the start is missing.
#pragma once

#include "core/base/result.h"
#include "core/domain/block.h"

namespace steelyard {

[[nodiscard]] Result<BlockTemplate> templateOf(const Block&, const QString& name);
[[nodiscard]] Result<Block> blockOf(const BlockTemplate&, Id<Athlete>, const QString& name, QDate start);

}  // namespace steelyard
