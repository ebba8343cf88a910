// One set counted live: keys in, repetitions out. A value without a clock; every event that needs a time brings it.
//
//   RepCounter counter;
//   counter.loweringBegins(1200ms); counter.loweringEnds(3700ms);   // held down while the load goes down
//   counter.repetition(5100ms);                                     // done: it was lowered in 2.5 s
//   counter.mark(Mark::Swing);                                      // the repetition just counted; a second time: not
//   counter.partWay(9000ms);                                        // one more failed part-way: the set is over
//   counter.takeBack();                                             // the failure is gone, then the repetition
//   counter.repetitions();                                          // to be stored
//
// A lowering that was tapped belongs to the repetition that is counted next, whichever end the lift begins at; of several the
// last one stands. Times are of one steady clock, in milliseconds from any moment; one that runs backwards measures nothing. What
// is left of the time since the repetition before, when the lowering is taken off, is kept as the lifting time, pauses included;
// the first repetition has none. Times of two minutes and more are no repetition's and are left out.
// Every event says whether it changed anything: no mark without a repetition, nothing after a failure, 200 repetitions at most.
#pragma once

#include "core/domain/repetition.h"

#include <chrono>

namespace steelyard {

class RepCounter {
public:
    using Time = std::chrono::milliseconds;

    bool repetition(Time at);
    bool partWay(Time at);
    bool mark(Mark mark);
    bool loweringBegins(Time at);
    bool loweringEnds(Time at);
    // A lowering that waits for its repetition, else the last repetition.
    bool takeBack();

    [[nodiscard]] int done() const { return static_cast<int>(m_repetitions.size()) - (failed() ? 1 : 0); }
    [[nodiscard]] int marked() const;
    [[nodiscard]] bool failed() const { return !m_repetitions.empty() && m_repetitions.back().partWay; }
    [[nodiscard]] bool isLowering() const { return m_loweringSince.has_value(); }
    [[nodiscard]] bool empty() const { return m_repetitions.empty() && !m_loweringSince && !m_lowering; }
    // Of the last lowering, whether its repetition was counted yet or not.
    [[nodiscard]] std::optional<Decimal> lastLowering() const;
    // From one repetition to the next, in seconds: the last one's.
    [[nodiscard]] std::optional<double> rhythm() const;
    [[nodiscard]] const std::vector<Repetition>& repetitions() const { return m_repetitions; }

    friend bool operator==(const RepCounter&, const RepCounter&) = default;

private:
    bool add(Time at, bool partWay);

    std::vector<Repetition> m_repetitions;
    std::vector<Time> m_ends;  // of each of them
    std::optional<Time> m_loweringSince;
    std::optional<Time> m_lowering;  // how long, of the repetition to come
};

}  // namespace steelyard
