// A set that is just being typed, beside what is known: is it likely that this was meant?
//
//   const EntryBackground background{record, date, Loading::BarTotal, planned, {}};
//   if (const auto question = questionAbout(set, background))
//       question->slip == EntrySlip::Unit;  question->fitting->load == 95 lb;     // "95 kg" was typed where 43 are usual
//
// Looked at in this order: the sessions around the day (flags/entry_doubts.h, at least three); a jump over everything that the
// line ever showed; without such a record the load planned or lifted just before; then what no one lifts at all. A warm-up is
// light by intent, so only the last is asked of it. Asking is all this does: the coach who was there knows better.
//
// Units: kilograms. Pure; no failures.
#pragma once

#include "core/flags/entry_doubts.h"

namespace steelyard {

// Our conventions.
struct EntryLimits {
    DoubtLimits usual;             // beside the sessions around
    double jump = 1.35;            // to the best of the last sessions, as a one-repetition equivalent (Epley 1985)
    std::size_t jumpSessions = 8;  // how many these are
    double besidePlan = 2;         // to the load planned or lifted just before, where there is no record
    double mostKg = 500;           // on a bar, a stack or a plate machine
    double mostPerHandKg = 100;    // one dumbbell
    double mostAddedKg = 200;      // hung on to the body, or taken off it
    int mostReps = 100;
};

enum class EntryTrouble {
    Unusual,   // beside the sessions around it, or beside the plan
    Jump,      // further up than anybody gets between two sessions
    TooHeavy,  // for anybody
    TooMany,   // repetitions, for anybody
};

struct EntryQuestion {
    EntryTrouble trouble = EntryTrouble::Unusual;
    EntrySlip slip = EntrySlip::Unclear;
    std::optional<FittingEntry> fitting;  // what was probably meant
    std::optional<double> usualKg;        // what is usual, or was planned
    std::optional<double> usualReps;      // absent where only a load is known
};

struct EntryBackground {
    const LineRecord* record = nullptr;  // null: never done
    QDate date;
    Loading loading = Loading::BarTotal;
    std::optional<Load> planned;  // or lifted just before
};

[[nodiscard]] std::optional<EntryQuestion> questionAbout(const SetEntry&, const EntryBackground&,
                                                         const EntryLimits& = {});

}  // namespace steelyard
