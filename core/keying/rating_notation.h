// The rating of an exercise on one line, as words with a number from 0 to 10: typed beside the sets, written back where it is
// edited.
//
//   readRating(u"tension 7, pump 8, gave out target, elbow 2", names)
//   writeRating(rating)        "tension 7, pump 8, elbow 2, gave out target"
//
// Parts are separated by commas, in any order, each once; a word may be cut short while it stays the only one ("tens 7",
// "lower 2"). Joints are discomfort; soreness and weakness are those of the day after. What gave out is "target" or a muscle by
// its key or its name. What isn't said isn't rated; an empty line rates nothing. Failure: the place in the line and what to type
// there (set_notation.h). Never anything else, whatever the input.
#pragma once

#include "core/keying/set_notation.h"

namespace steelyard {

using RatingReading = tl::expected<ExerciseRating, NotationProblem>;

// Without the joints of a lifter who has not agreed that discomfort is kept.
[[nodiscard]] RatingReading readRating(QStringView line, const std::vector<Row<Muscle>>& muscles,
                                       bool discomfort = true);
[[nodiscard]] QString writeRating(const ExerciseRating& rating);

}  // namespace steelyard
