// The marks of who was erased from a book, also on its backup shelf: a book that is lost takes its own marks along, and a backup of
// before must lose the same people all the same.
//
//   STEELYARD_CHECK(rememberErased(shelfFolder, marks));         // after an erasure; adds to what stands there
//   const auto marks = erasedFrom(bookPath, shelfFolder);        // of the book, if it can be read, and of the shelf
//   const auto others = erasedBeside(shelfFolder);               // of the other books' shelves beside it
//
// erased.json: {"format": 1, "erased": [{"mark": UUID, "erased_at": time}]}. No names. A list that can't be read counts as empty: a
// book must be restorable without it. Failure of writing: Storage.
#pragma once

#include "core/storage/erased_athlete_repository.h"

namespace steelyard {

[[nodiscard]] Result<void> rememberErased(const QString& shelfFolder, const std::vector<ErasedAthlete>& erased);
[[nodiscard]] std::vector<ErasedAthlete> erasedFrom(const QString& book, const QString& shelfFolder);
[[nodiscard]] std::vector<ErasedAthlete> erasedBeside(const QString& shelfFolder);

}  // namespace steelyard
