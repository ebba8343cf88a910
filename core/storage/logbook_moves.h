// Sets, ratings and their history from one place of the record to another: to another lift line, to another day.
//
//   STEELYARD_TRY(const int sets, moveExposure(tx, athlete, session, wrongLine, rightLine));
//
// What is moved keeps its numbers and whatever points at a set by its id (repetitions one by one). Where two would stand in one
// place the move is refused (Conflict) and the transaction is to be dropped. Failures: Conflict, Storage.
#pragma once

#include "core/domain/logbook.h"
#include "core/storage/transaction.h"

namespace steelyard {

// One session's sets of one line, with rating and what they said before. Gives how many sets that were.
[[nodiscard]] Result<int> moveExposure(Transaction&, Id<Athlete> owner, Id<Session>, Id<LiftLine> from,
                                       Id<LiftLine> to);
// To a day without a session; to a day with one it is joined to that, its sets after those that are there.
[[nodiscard]] Result<void> moveSession(Transaction&, Id<Athlete> owner, QDate from, QDate to);
// What was decided about one line is about the other from now on. Gives how many decisions that were.
[[nodiscard]] Result<int> moveDecisions(Transaction&, Id<Athlete> owner, Id<LiftLine> from, Id<LiftLine> to);

}  // namespace steelyard
