// What a new block can be started from: the lifter's last block, nothing, a template. Another way to start is one more entry here.
//
//   for (const BlockSource& source : blockSources(blocks, templates)) …
//   source.make(name, start)          // a block with that shape, or why not
#pragma once

#include "core/base/result.h"
#include "core/planning/block_ops.h"

#include <functional>

namespace steelyard {

struct BlockWishes {
    Id<Athlete> athlete;
    QString name;
    QDate start;
    std::size_t weeks = 5;
    std::vector<int> weekdays;
    bool lastIsDeload = true;
    std::vector<DaysOff> daysOff = {};
};

struct BlockSource {
    QString title;
    bool hasShape = false;  // weeks and their kinds come with it; otherwise they are chosen
    std::size_t weeks = 5;
    std::vector<int> weekdays;
    std::function<Result<Block>(const BlockWishes&)> make;
};

// The last block first, then a blank one, then the templates by name. `usual` are the weekdays that a blank one begins with.
[[nodiscard]] std::vector<BlockSource> blockSources(const std::vector<Row<Block>>& blocks,
                                                    const std::vector<Row<BlockTemplate>>& templates,
                                                    const std::vector<int>& usual);
// What the source gives, on the weekdays that were chosen and around the days off.
[[nodiscard]] Result<Block> startBlock(const BlockSource&, const BlockWishes&);
// The Monday after the last block, not before the next one from today on.
[[nodiscard]] QDate usualStart(const std::vector<Row<Block>>& blocks, QDate today);

}  // namespace steelyard
