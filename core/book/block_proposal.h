// A block proposed for a lifter of a book, by what the book knows on a day: record, library, gym and which lines progress.
//
//   ProposalWishes wishes{.today = today, .from = monday};
//   STEELYARD_TRY(const auto proposal, readProposal(book->database(), athlete, wishes, progress));
//   STEELYARD_CHECK(book->history().perform(addBlock(proposal.block)));
//
// The database is only read. `wishes.progressing` is filled in from the readings of that day. Failures: those of
// proposeBlock(), NotFound, Storage.
#pragma once

#include "core/planning/propose_block.h"
#include "core/storage/database.h"

namespace steelyard {

[[nodiscard]] Result<BlockProposal> readProposal(Database&, Id<Athlete>, ProposalWishes, const Progress&);

}  // namespace steelyard
