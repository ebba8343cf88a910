#include "ui/pages/block/block_sources.h"

#include "core/planning/block_templates.h"
#include "ui/pages/block/block_words.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct BlockSourceText {
    Q_DECLARE_TR_FUNCTIONS(BlockSourceText)
};

std::vector<int> weekdaysOfShape(const std::vector<PlannedWeek>& weeks)
{
    const auto trained = std::ranges::find_if(weeks, [](const PlannedWeek& week) { return !week.days.empty(); });
    std::vector<int> days = trained == weeks.end() ? std::vector<int>() : weekdaysOf(*trained);
    std::ranges::sort(days);
    return days;
}

BlockSource fromBlock(const Block& last)
{
    return {BlockSourceText::tr("The last block again: %1").arg(blockWords(last)), true, last.weeks.size(),
            weekdaysOfShape(last.weeks),
            [last](const BlockWishes& wishes) { return repeatBlock(last, wishes.name, wishes.start); }};
}

BlockSource blank(const std::vector<int>& usual)
{
    return {BlockSourceText::tr("Empty weeks"), false, 5, usual, [](const BlockWishes& wishes) {
                return blankBlock({.athlete = wishes.athlete,
                                   .name = wishes.name,
                                   .start = wishes.start,
                                   .weeks = wishes.weeks,
                                   .weekdays = wishes.weekdays,
                                   .lastIsDeload = wishes.lastIsDeload});
            }};
}

BlockSource fromTemplate(const BlockTemplate& shape)
{
    return {BlockSourceText::tr("Template: %1").arg(shape.name), true, shape.weeks.size(), weekdaysOfShape(shape.weeks),
            [shape](const BlockWishes& wishes) { return blockOf(shape, wishes.athlete, wishes.name, wishes.start); }};
}

}  // namespace

std::vector<BlockSource> blockSources(const std::vector<Row<Block>>& blocks,
                                      const std::vector<Row<BlockTemplate>>& templates, const std::vector<int>& usual)
{
    std::vector<BlockSource> sources;
    if (!blocks.empty()) sources.push_back(fromBlock(blocks.back().value));
    sources.push_back(blank(usual));
    for (const auto& row : templates) sources.push_back(fromTemplate(row.value));
    return sources;
}

Result<Block> startBlock(const BlockSource& source, const BlockWishes& wishes)
{
    STEELYARD_TRY(Block block, source.make(wishes));
    if (source.hasShape && wishes.weekdays != source.weekdays) {
        STEELYARD_TRY(block, setWeekdays(std::move(block), wishes.weekdays, 0));
    }
    if (wishes.daysOff.empty()) return block;
    return setDaysOff(std::move(block), wishes.daysOff, wishes.start);
}

QDate usualStart(const std::vector<Row<Block>>& blocks, QDate today)
{
    QDate start = today.addDays((8 - today.dayOfWeek()) % 7);
    for (const Row<Block>& row : blocks) start = std::max(start, endOf(row.value));
    return start.addDays((8 - start.dayOfWeek()) % 7);
}

}  // namespace steelyard
