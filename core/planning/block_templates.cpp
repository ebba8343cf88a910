#include "core/planning/block_templates.h"

#include "core/base/text.h"
#include "core/planning/block_ops.h"

namespace steelyard {

Result<BlockTemplate> templateOf(const Block& block, const QString& name)
{
    STEELYARD_TRY(Block shape, repeatBlock(block, name, kTemplateStart));
    BlockTemplate made{.name = shape.name, .aim = block.aim, .easing = block.easing, .weeks = std::move(shape.weeks)};
    const Problems problems = validate(made);
    if (!problems.empty()) return fail(ErrorCode::Invalid, problems.front().text, problems.front().field);
    return made;
}

Result<Block> blockOf(const BlockTemplate& shape, Id<Athlete> athlete, const QString& name, QDate start)
{
    Block block{.athlete = athlete, .name = shape.name, .aim = shape.aim, .start = kTemplateStart};
    block.weeks = shape.weeks;
    block.easing = shape.easing;
    return repeatBlock(std::move(block), name, start);
}

}  // namespace steelyard
