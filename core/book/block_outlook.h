// What the loads of a block would be if they were written today, from the book: the whole forecast, and what changes by it.
//
//   STEELYARD_TRY(const auto outlook, readBlockOutlook(book.database(), {athlete, block, today}));
//   outlook.changes[0].why
//
// The block is given as it stands on the screen, stored or not. The database is only read, and from the calling thread.
// Failures: NotFound (no such athlete), Storage.
#pragma once

#include "core/planning/block_forecast.h"
#include "core/storage/database.h"

namespace steelyard {

struct BlockOutlookRequest {
    Id<Athlete> athlete;
    Block block;
    QDate today;
    Wording wording = {};
};

struct BlockOutlook {
    BlockForecast forecast;
    std::vector<LoadChangeAhead> changes;
};

[[nodiscard]] Result<BlockOutlook> readBlockOutlook(Database&, const BlockOutlookRequest&);

}  // namespace steelyard
