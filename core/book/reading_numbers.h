// The numbers that readings of a day rest on: those of the book's newest fit up to that day, or the shipped ones.
//
//   STEELYARD_TRY(const ReadingParameters parameters, readReadingParameters(db, asOf));
//   const RegimeEngine engine(parameters, readingThresholds(settings), wording);
//
// A review of a day in the past is made with the numbers of that day, so that it says what was said then. Failure: Storage,
// also when a stored number is none that a reading could rest on.
#pragma once

#include "core/analysis/reading_parameters.h"
#include "core/domain/reading_fit.h"
#include "core/storage/database.h"

#include <QtCore/QDate>

namespace steelyard {

[[nodiscard]] Result<ReadingParameters> readReadingParameters(Database&, QDate asOf);
[[nodiscard]] Result<ReadingParameters> parametersOf(const ReadingFit&);

}  // namespace steelyard
