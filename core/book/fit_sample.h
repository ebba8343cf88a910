// Which lines of a roster a fit listens to: the same for the same book and day, evenly over the athletes.
//
//   STEELYARD_TRY(const FitSample sample, readFitSample(db, asOf, progress));
//
// Of everybody who isn't archived, the last 52 weeks of the lines that are trained most. Every athlete gives one line before
// any gives two. With enough of them every fifth is kept apart, so that a fit can be checked on lines that it didn't see.
// The database is only read. Failures: Cancelled, Storage.
#pragma once

#include "core/analysis/fit_line.h"
#include "core/storage/database.h"

namespace steelyard {

inline constexpr std::size_t kMostSampleLines = 100;  // about a minute's work on two cores
inline constexpr std::size_t kLeastLinesToKeepApart = 25;
inline constexpr int kSampleWeeks = 52;

struct FitSample {
    std::vector<FitLine> lines;  // to fit
    std::vector<FitLine> apart;  // to check
};

[[nodiscard]] Result<FitSample> readFitSample(Database&, QDate asOf, const Progress&);

}  // namespace steelyard
