// Lines that were trained anyway, beside each other: a first look that can't tell cause from circumstance.
//
//   const EverydayComparison look = compareEveryday(log, {first, second}, {from, to});
//   look.sentence     // always says that nobody drew lots
//
// The same outcomes and estimates as in a trial, of sessions that the days happened to bring. What else differed between the
// lines' sessions is named with its numbers: when they were trained, how late in the session, after how many other sets for
// the muscle, in which reps. There is never a "prefer"; the word is to start a trial.
//
// Units: those of trial_outcomes.h; days; places in the session from 1. Pure. Failures: a line that isn't in the log, or fewer
// than two lines: empty, with a sentence.
#pragma once

#include "core/trials/arm_effects.h"

namespace steelyard {

struct EverydaySpan {
    QDate first;
    QDate last;
};

enum class Circumstance { Time, Order, Fatigue, Reps, Reserve };

struct CircumstanceFound {
    Circumstance kind = Circumstance::Time;
    std::vector<double>
        byLine;        // Time: mean days after the span's first; Order: mean place; Fatigue: mean sets of the target's
                       // muscle done before in the session; Reps: mean of working sets; Reserve: mean repetitions
    QString sentence;  // for people
};

struct EverydayComparison {
    std::vector<int> sessions;                     // by line
    std::vector<OutcomeEffects> outcomes;          // of those that have values
    std::vector<CircumstanceFound> circumstances;  // those that differ enough to matter
    QString sentence;
};

[[nodiscard]] EverydayComparison compareEveryday(const AthleteLog&, const std::vector<Id<LiftLine>>& lines,
                                                 EverydaySpan, const std::vector<LineSurprises>& = {},
                                                 const Wording& = {});

}  // namespace steelyard
