// Entries that the sessions around them make unlikely, and what was probably meant.
//
//   for (const EntryDoubt& doubt : doubtfulEntries(line, from, asOf))
//       doubt.slip == EntrySlip::Unit && doubt.fitting->load == 99 lb   // "99 kg" was typed, where 45 kg are usual
//
// Of each session the heaviest working set is looked at, because a wrong unit or point shows there, beside up to four
// sessions on either side (at least three in all). A slip is named when what it would mean is close to the usual; of
// several that are, the closest is named.
//
// Units: kilograms. Pure; no failures.
#pragma once

#include "core/flags/snapshot.h"

namespace steelyard {

// Our convention.
struct DoubtLimits {
    double ratio = 1.8;      // to the usual load
    double repsRatio = 2.5;  // to the usual repetitions, and at least ten more
};

enum class EntrySlip {
    Unit,       // the number is right, the unit is the other one
    Converted,  // turned into the unit that it was in already
    Point,      // the decimal point is at the wrong place
    Digits,     // a digit too many: a key hit twice, or two numbers run together
    Exchanged,  // load and repetitions
    Repetitions,
    Unclear,
};

struct FittingEntry {
    Load load;
    int reps = 0;
};

struct EntryDoubt {
    QDate date;
    const SetEntry* set = nullptr;  // never null
    EntrySlip slip = EntrySlip::Unclear;
    std::optional<FittingEntry> fitting;  // what was probably meant; absent when unclear
    double usualKg = 0;
    double usualReps = 0;
};

// What is usual around a day.
struct UsualEntry {
    double lnLoad = 0;   // median of ln kilograms
    double scatter = 0;  // robust SD of it
    double reps = 0;     // median
};

// Oldest first, dates in (from, until].
[[nodiscard]] std::vector<EntryDoubt> doubtfulEntries(const SnapshotLine&, QDate from, QDate until,
                                                      const DoubtLimits& = {});

// For a set that is just being typed: what the sessions around its day say, that day left out, and what is odd about the set
// beside them. Absent: fewer than three sessions; nothing odd. The set outlives the doubt.
[[nodiscard]] std::optional<UsualEntry> usualAround(const LineRecord&, QDate date);
[[nodiscard]] std::optional<EntryDoubt> doubtBeside(const UsualEntry&, const SetEntry&, QDate date,
                                                    const DoubtLimits& = {});

}  // namespace steelyard
