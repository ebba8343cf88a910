// The sessions of a line within a stretch of time, each with what the chart of the ratings draws of it.
//
//   for (const RatedSession& session : ratedSessions(source, options)) session.countedShare
//
// Oldest first. What wasn't written down is absent. The source outlives the sessions.
#pragma once

#include "ui/charts/ratings_spec.h"

namespace steelyard {

struct RatedSession {
    int exposure = 0;  // index into the record's
    const Exposure* logged = nullptr;
    std::optional<double> capacityKg;
    bool offStandard = false;
    bool watched = false;
    std::optional<double> countedShare;     // of the watched repetitions
    MarkCounts marks;                       // of all sets but warm-ups
    std::optional<double> loweringSeconds;  // mean of the sets that have them

    [[nodiscard]] double x() const { return chartDay(logged->date); }
};

[[nodiscard]] std::vector<RatedSession> ratedSessions(const RatingsSource& source, const PanelsOptions& options);

}  // namespace steelyard
