// Why a lifter stands where they stand in the roster, in words: what concerns, the flags that weigh most, and when they were
// last looked at.
//
//   attentionWords(review, asOf)
//   "Open: 1 pain, 2 not moving
//    ● first: Joint discomfort
//    …
//    Looked at 12 days ago"
#pragma once

#include "core/flags/athlete_review.h"
#include "core/flags/flag_rule.h"

namespace steelyard {

[[nodiscard]] QString concernWord(Concern concern);  // "pain", "falling", "can't be read", "not moving", "housekeeping"
// In lines. As of the day of the review.
[[nodiscard]] QString attentionWords(const AthleteReview& review, QDate asOf);

}  // namespace steelyard
