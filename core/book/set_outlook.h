// What to expect of a planned set of one lifter on one line, or which load brings a wanted number of repetitions: the answer to
// a question that names both by text.
//
//   OutlookRequest request{u"Ada Fulcrum"_qs, u"arm-curl/cable/as-usual/strict"_qs, asOf};
//   request.reps = 10;
//   STEELYARD_TRY(const auto outlook, readSetOutlook(book->database(), request));
//   outlook.target.targetReps;   // at outlook.loadable, if the lifter's gym is known
//
// Only what was known on that day goes into it. The database is only read. Units: kilograms, repetitions.
// Failures: NotFound (no such lifter, no such line: those that exist are named, nearest first), Invalid (a load with which
// nothing would be moved or that is out of all proportion to the record; a line without a set that says anything, or without
// any for kMostDaysSince), Storage.
#pragma once

#include "core/analysis/set_target.h"
#include "core/storage/database.h"

namespace steelyard {

inline constexpr double kMostReserveAsked = 10;

inline constexpr int kMostWantedReps = 50;
inline constexpr int kMostSetNumber = 20;
inline constexpr int kMostDaysSince = 365;  // the last session on the line; what a longer break takes nobody knows

struct OutlookRequest {
    QString athlete;  // by name
    QString line;     // by key
    QDate asOf;
    std::optional<Load> load;  // either this
    std::optional<int> reps;   // or this: from 1 to kMostWantedReps
    double rir = 2;            // from 0 to kMostReserveAsked
    int setNumber = 1;         // from 1 to kMostSetNumber
};

struct SetOutlook {
    QString athlete;
    MassUnit unit = MassUnit::kg;  // the lifter's own
    QString lineKey;
    QString lineName;                     // "Arm curl, straight bar, supinated, strict"
    SetTarget target;                     // at the load asked for, or at the one for the repetitions wanted
    std::optional<double> loadForRepsKg;  // at which these are reached about three times in four
    std::optional<Load> loadable;  // nearest to that in the lifter's gym; absent: no gym is named, or nothing fits
    // Machine words of what makes the answer weaker: too_few, mixed_record, effort_unknown, body_mass_assumed.
    QStringList cautions;
};

[[nodiscard]] Result<SetOutlook> readSetOutlook(Database&, const OutlookRequest&);

}  // namespace steelyard
