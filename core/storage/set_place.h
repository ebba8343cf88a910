// Where a set that comes into a session goes.
//
//   STEELYARD_TRY(const PlacedSet placed, placeAtEnd(tx, line, date, set));          a set more: behind the day's last one
//   STEELYARD_TRY(const PlacedSet placed, placeByNumber(tx, session, line, set));    a set with a number: where that belongs
//
// By number: behind its line's sets with lower numbers, else behind every set of the session with a lower one; sets that stand
// there move on by one. Where its line has that number already it takes the one after the session's last. The session's and
// the line's rows are found or made by placeAtEnd. Failure: Storage.
#pragma once

#include "core/domain/logbook.h"
#include "core/storage/transaction.h"

namespace steelyard {

[[nodiscard]] Result<PlacedSet> placeAtEnd(Transaction&, const LiftLine&, QDate, SetEntry);
[[nodiscard]] Result<PlacedSet> placeByNumber(Transaction&, Id<Session>, Id<LiftLine>, SetEntry);

}  // namespace steelyard
