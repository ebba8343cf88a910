// The why view in words: how a set was heard, how fully it counted, which way it spoke, and how the verdict is decided.
//
//   pullWords(0.8)                 "◆◆ not rising, strongly"
//   decisionWords(reading, why, thresholds)
//                                  "Not rising is 74 % likely as the sets add up; 67 % is asked for this lifter …"
#pragma once

#include "core/analysis/line_explanation.h"

#include <QtCore/QString>

namespace steelyard {

// "42.5 kg × 9, 2 off, RIR 1": what bears on strength; without marks and notes, which wholeSetWords has.
[[nodiscard]] QString briefSetWords(const SetEntry& set);
[[nodiscard]] QString wholeSetWords(const SetEntry& set);
[[nodiscard]] QString togetherWords(const ExplainedSession& session);  // "3 sets together"
[[nodiscard]] QString heardWords(const ExplainedSet& set);             // "at least", "warm-up"
[[nodiscard]] QString expectedWords(const ExplainedSet& set);          // "10.2 (8–12)"
[[nodiscard]] QString reachedWords(const ExplainedSet& set);           // "9.6", "≥ 13.0", "6.5–10.5"
[[nodiscard]] QString countedWords(const ExplainedSet& set);
[[nodiscard]] QString pullWords(double pull);
// Which days of the week come out better or worse; empty where none does.
[[nodiscard]] QString weekdayWords(const LineExplanation& why);
// What was asked for the verdict and what there is.
[[nodiscard]] QString decisionWords(const LineReading& reading, const LineExplanation& why,
                                    const VerdictThresholds& limits);

}  // namespace steelyard
