// Copies the rows of one table from a damaged file into a book, stepping over what can't be read.
//
//   STEELYARD_TRY(const RescuedTable sets, rescueRows(damaged, QStringLiteral("set_entry"), book, progress));
//
// Rows are read by their ids: upwards until the file fails, downwards until it fails, then the gap between piece by piece, the largest
// pieces first, so that a damaged page costs the rows on it and no others. A gap so wide that it can't be searched to its end is given up
// after kMostProbes. Ids must rise, or a page that leads back to an earlier one would be read for ever.
#pragma once

#include "core/storage/damaged_file.h"

namespace steelyard {

inline constexpr int kMostProbes = 20'000;

[[nodiscard]] Result<RescuedTable> rescueRows(sqlite3* damaged, const QString& table, Database& into,
                                              const Progress& progress);

}  // namespace steelyard
