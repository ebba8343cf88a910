// What was read of one lifter, kept: a new session costs one step, and an edit of an old one replays from the last kept state
// before it instead of from the first day.
//
//   ReadingMemory memory;
//   engine.readAll(log, asOf, &memory);      // reads everything
//   engine.readAll(longerLog, asOf, &memory) // goes on
//
// A kept state is used only if everything it rests on is the same: sets, body mass, plans, experience, bands, numbers. So a
// reading with a memory equals one without, to the last bit. Not for several threads at once.
// States are kept for today, yesterday and about 4, 13, 26, 52, 104 and 208 weeks back: some hundred kilobytes for each.
#pragma once

#include "core/analysis/lifter_tracker.h"

namespace steelyard {

class ReadingMemory {
public:
    // The state of all lines up to `asOf`. The engine's numbers must be the same object in every call.
    [[nodiscard]] const LifterTracker& recall(const AthleteLog&, const CountedLines&, QDate asOf,
                                              const ReadingParameters&, const VerdictThresholds&);
    // Weeks that the last recall had to go through; for tests and benchmarks.
    [[nodiscard]] qint64 weeksReplayed() const { return m_weeksReplayed; }

private:
    struct Kept {
        QDate until;
        std::uint64_t seal = 0;  // of everything that the state rests on
        LifterTracker state;
    };

    void thin(QDate asOf);

    std::vector<Kept> m_kept;  // oldest first; the last is up to date
    qint64 m_weeksReplayed = 0;
};

}  // namespace steelyard
