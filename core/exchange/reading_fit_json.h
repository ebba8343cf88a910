// The book's learned numbers as a part of book.json: of the whole book only, because they are nobody's own.
//
//   "reading_parameters": [{"version": 1, "fitted_on": "2027-03-01", "lines": 80, "sets": 24000,
//                           "log_likelihood_before": 1.5, "log_likelihood_after": 2.5, "numbers": {name: number}}]
//
// Failures: Invalid with the place in the document; Storage.
#pragma once

#include "core/domain/reading_fit.h"
#include "core/storage/transaction.h"

#include <QtCore/QJsonArray>

namespace steelyard {

[[nodiscard]] QJsonArray readingFitsJson(const std::vector<ReadingFit>&);
// Replaces what the book has.
[[nodiscard]] Result<void> readingFitsFromJson(Transaction&, const QJsonArray&);

}  // namespace steelyard
