// Makes the rows of a salvaged book hang together again. Lost lifters, exercises, grips and standards get a stand-in with a name that
// says so, and a lost lift line one of its own, so that the sets which belong to them are kept; what hangs on nothing any more is left out.
//
//   STEELYARD_TRY(const MendedLinks mended, mendLinks(transaction));
//
// Afterwards every foreign key leads somewhere. Failure: Storage.
#pragma once

#include "core/storage/transaction.h"

#include <map>

namespace steelyard {

struct MendedLinks {
    int standIns = 0;
    std::map<QString, std::int64_t> leftOut;  // by table
};

[[nodiscard]] Result<MendedLinks> mendLinks(Transaction& transaction);

}  // namespace steelyard
