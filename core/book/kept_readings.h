// The readings of the lifters that were worked on last, kept so that a set that was just typed costs one step of each
// filter and not years of them.
//
//   KeptReadings kept;
//   const AthleteReview review = kept.review(log, parameters, settings, asOf, wording);   // equal to reviewAthlete()
//
// A kept state is used only if everything it rests on is unchanged (core/analysis/reading_memory.h). Any thread may ask; one
// at a time is answered. Keeps a few lifters, some megabytes.
#pragma once

#include "core/analysis/regime_engine.h"
#include "core/flags/athlete_review.h"

#include <list>
#include <mutex>

namespace steelyard {

class KeptReadings {
public:
    [[nodiscard]] AthleteReview review(const AthleteLog&, const ReadingParameters&, const RuleSettings&, QDate asOf,
                                       const Wording&);
    // Weeks that the last review had to go through; for tests and benchmarks.
    [[nodiscard]] qint64 weeksReplayed() const { return m_weeksReplayed; }

private:
    struct Kept {
        Id<Athlete> athlete;
        Wording wording;
        RegimeEngine engine;  // the memory's states point into it
        ReadingMemory memory;
    };

    Kept& keptFor(Id<Athlete>, const ReadingParameters&, const VerdictThresholds&, const Wording&);

    std::mutex m_mutex;
    std::list<Kept> m_kept;  // the last asked for first
    qint64 m_weeksReplayed = 0;
};

}  // namespace steelyard
