// A new book: empty but for the starter library and its gyms. Their rows have the same UUIDs in every book, so that two
// books agree on what they mean by a variant.
#pragma once

#include "core/book/book.h"
#include "core/exchange/starter_library.h"

namespace steelyard {

// Refuses to overwrite a file.
[[nodiscard]] Result<std::unique_ptr<Book>> newBook(const QString& path, const Clock& clock);
[[nodiscard]] Result<void> fillStarterLibrary(Transaction&, const StarterLibrary&);

}  // namespace steelyard
