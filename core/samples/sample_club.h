// Fills an empty book (with the starter library) with an invented club: lifters, gyms, several years of sessions, running
// blocks, and decisions of the last weeks. The same options give the same content.
//
//   STEELYARD_CHECK(fillSampleClub(*book, {.athletes = 24, .years = 3, .seed = 1, .lastDay = today}, progress));
//
// Names are invented and plainly so: the parts of a balance. Failures: Invalid (out of range), Cancelled, Storage.
#pragma once

#include "core/base/progress.h"
#include "core/book/book.h"

namespace steelyard {

struct SampleClubOptions {
    int athletes = 24;  // 1..500
    int years = 3;      // 1..10
    std::uint64_t seed = 1;
    QDate lastDay;                // the log ends here
    int exercisesPerSession = 4;  // 1..8
};

[[nodiscard]] Result<void> fillSampleClub(Book&, const SampleClubOptions&, const Progress&);

}  // namespace steelyard
