// Repetitions one by one in words.
//
//   repetitionWords(one)                           "3: 498 mm, lifted in 1.0 s, lowered in 2.4 s, short at the top"
//   consistencyWords(found, Travel)                "Travel: 498 mm, from one to the next typically 7 mm apart (1.4 %; 40 pairs)."
#pragma once

#include "core/analysis/repetition_consistency.h"
#include "core/analysis/repetition_travel.h"

namespace steelyard {

[[nodiscard]] QString repetitionWords(const Repetition& one);
[[nodiscard]] QString consistencyWords(const RepetitionConsistency& found, RepetitionQuantity quantity);
// Of all three quantities that can be told, a line each; empty: none can.
[[nodiscard]] QString consistencyWords(std::span<const std::vector<Repetition>> like);
// "Full travel 503 mm (the median of 24 of the longest); counted from 453 mm on (90 %)."
[[nodiscard]] QString fullTravelWords(const FullTravel& full, std::optional<int> leastPercent);

}  // namespace steelyard
