// One lifter's day as the book has it: what was keyed, imported or counted, line by line.
//
//   STEELYARD_TRY(const SessionRecord record, readSession(book.database(), athlete, date));
//
// Sets stand in the order of the session. A rating may stand for a line without sets.
#pragma once

#include "core/domain/logbook.h"

namespace steelyard {

struct RecordedSet {
    Id<SetEntry> id;
    LiftLine lift;
    SetEntry set;
    friend bool operator==(const RecordedSet&, const RecordedSet&) = default;
};

struct RecordedRating {
    LiftLine lift;
    ExerciseRating rating;
    friend bool operator==(const RecordedRating&, const RecordedRating&) = default;
};

struct SessionRecord {
    std::vector<RecordedSet> sets;
    std::vector<RecordedRating> ratings;
    friend bool operator==(const SessionRecord&, const SessionRecord&) = default;
};

}  // namespace steelyard
