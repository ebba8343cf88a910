// The review of the whole roster, worst first, on as many threads as there are cores. Each thread reads the book through
// its own connection.
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/book/kept_readings.h"

#include <memory>

namespace steelyard {

struct RosterReviewRequest {
    QString bookPath;
    QDate asOf;
    std::vector<Id<Athlete>> only;  // empty: everybody who is not archived
    Wording wording;                // of what people read
    // Where given, readings of the few lifters of `only` go on from what is kept in it, and are kept in it.
    std::shared_ptr<KeptReadings> kept;
};

// Sorted by attention, then name. The same whatever the number of threads. Fails with Cancelled when asked to stop.
[[nodiscard]] Result<std::vector<AthleteReview>> reviewRoster(const RosterReviewRequest&, const Progress&);

}  // namespace steelyard
