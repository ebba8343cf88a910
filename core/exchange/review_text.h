// A review as text for a terminal: worst first; for each lifter the open flags, then a table of the lines.
//
//   out << reviewText(asOf, reviews);
//
// At most kReviewTextWidth columns, numbers in the C locale. No failures.
#pragma once

#include "core/flags/athlete_review.h"

namespace steelyard {

inline constexpr qsizetype kReviewTextWidth = 100;

[[nodiscard]] QString reviewText(QDate asOf, const std::vector<AthleteReview>& reviews);
// "can't tell": a verdict as a word for people.
[[nodiscard]] QString verdictWord(Verdict);

}  // namespace steelyard
