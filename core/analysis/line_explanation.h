// Which sets carried what is said of a line: for each set of the last weeks what was expected of it, what it reached, how
// fully it counted, and which way it moved the chance that the line isn't rising.
//
//   const LineExplanation why = explainLine(engine, record, log, asOf);
//   why.sessions.back().sets.front().pull   // 0.4: the odds of "not rising" went up by e^0.4 through this set
//
// Pull. ln of the odds of "not rising" after the set less before it; the sets of a session are let in one by one, and the
// last one leaves the filter just as the reading found it, so `before` + the pulls = `after`. Between sessions the odds
// move as well, because each week a change becomes possible and because the lifter's other lines say more of the lifter;
// that is no set's pull and belongs to nobody. What a set pulls depends on those before it: three alike in one session pull
// less each.
//
// Weight. Of an exact set the share that Student-t errors leave it, min(1, (nu+1) / (nu-2 + e^2/S)), with e how far it lay
// from what was expected before the session and S that expectation's variance, averaged over what may be going on. A
// bound counts fully where it bites, that is where what it rules out was likely enough, and else not at all.
//
// Units: repetitions to failure; logarithms of odds. Nothing after the day is looked at. Failures: none.
#pragma once

#include "core/analysis/regime_engine.h"

namespace steelyard {

// Slip: so far from the sessions before it that it was left out (line_tracker.h).
enum class HeardAs { Exactly, AtLeast, AtMost, Between, WarmUp, NoLoad, Slip };

// Repetitions to failure that were to be expected before the session: half of such sets stay below `median`, four in five
// lie between the others, the error of writing them down included.
struct ExpectedReps {
    double median = 0;
    double low80 = 0;
    double high80 = 0;
    friend bool operator==(const ExpectedReps&, const ExpectedReps&) = default;
};

struct ExplainedSet {
    LoggedSet logged;
    int number = 0;  // among the working sets of its session, from 1; 0: a warm-up
    HeardAs heard = HeardAs::WarmUp;
    std::optional<ExpectedReps> expected;  // absent in the first session and where nothing was heard
    std::optional<double> atLeast;         // repetitions to failure; exactly: both are the same
    std::optional<double> atMost;
    double weight = 0;  // 0 to 1
    double pull = 0;    // above 0: speaks for "not rising"
};

struct ExplainedSession {
    std::size_t exposure = 0;  // index into the record's exposures
    QDate date;
    double before = 0;  // ln odds of "not rising"; both are 0 when nothing of the session was heard
    double after = 0;
    std::vector<ExplainedSet> sets;  // in their order, warm-ups too

    [[nodiscard]] double pull() const { return after - before; }
};

struct LineExplanation {
    std::vector<ExplainedSession> sessions;  // oldest first
    std::optional<RegimeChances> chances;    // today, as the filter states them; absent: no set said anything
    double notRisingLimit = 1;               // how likely "not rising" must be for this lifter
    // Monday first: by which share of the load the day is better or worse than a usual one; 0 where the record doesn't say.
    std::array<double, 7> weekdayShares{};
};

[[nodiscard]] LineExplanation explainLine(const RegimeEngine&, const LineRecord&, const AthleteLog&, QDate asOf,
                                          int weeks = 12);

// In words. The borders are our conventions: what doubles the odds or halves them speaks strongly, what changes them by a
// quarter somewhat, by a twentieth hardly, and by less for neither.
enum class PullStrength { Neither, Hardly, Somewhat, Strongly };
[[nodiscard]] PullStrength pullStrength(double pull);
// Three quarters of the weight or more is fully, a third partly, a tenth little. Conventions.
enum class WeightWord { Not, Hardly, Little, Partly, Fully };
[[nodiscard]] WeightWord weightWord(const ExplainedSet&);
[[nodiscard]] bool isHeard(const ExplainedSet&);

// ln of the odds of "not rising".
[[nodiscard]] double notRisingLogOdds(const RegimeChances&);

}  // namespace steelyard
