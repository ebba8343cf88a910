// Where a new set goes: after the last set of its day, with the number after the last one.
//
//   STEELYARD_TRY(const PlacedSet placed, placeAtEnd(tx, line, date, set));
//
// Session and lift line are found or made. Failure: Storage.
#pragma once

#include "core/domain/logbook.h"
#include "core/storage/transaction.h"

namespace steelyard {

[[nodiscard]] Result<PlacedSet> placeAtEnd(Transaction&, const LiftLine&, QDate, SetEntry);

}  // namespace steelyard
