// What a trial asks after its session and nobody has rated yet. Asked once before the lifter is left, never forced.
//
//   for (const MissingRatings& missing : missingTrialRatings(desk->sheet()))
//       missing.exercise, missing.cells                        // {Tension, Pump}
//
// Only exercises with a set in the book. Discomfort is asked whatever weighs in the trial, because it is the veto; one joint that is
// rated is an answer, since the others are then not worth a number. The day after is asked at the next session (next_day.h).
// Pure; no failures.
#pragma once

#include "core/keying/keying_sheet.h"
#include "core/keying/rating_cells.h"

namespace steelyard {

struct MissingRatings {
    std::size_t exercise = 0;            // of the sheet
    std::vector<RatingCell> cells = {};  // the first joint's for discomfort
    friend bool operator==(const MissingRatings&, const MissingRatings&) = default;
};

[[nodiscard]] std::vector<MissingRatings> missingTrialRatings(const KeyingSheet&);
// Keys of the outcomes that are asked right after the exercise, in the order of the rating cells; discomfort last, whatever weighs,
// unless the lifter has not agreed that it is kept.
[[nodiscard]] std::vector<QString> askedAfterExercise(const SheetTrial&, bool discomfort = true);

}  // namespace steelyard
