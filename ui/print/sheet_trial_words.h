// What the paper and the keying screen say of a trial's session.
//
//   trialWords(exercise)       "Trial: arm B today (neutral, medium), session 5 of 12."
//   trialWordsShort(exercise)  "Trial: arm B (neutral, medium)"
//   trialAskWords(exercise)    "Ask right after the last set, in these words every time: …"
//
// Empty where the exercise is in no trial that day. Decimals follow the locale.
#pragma once

#include "core/sheets/session_sheet.h"

namespace steelyard {

[[nodiscard]] QString trialWords(const SheetExercise& exercise);
[[nodiscard]] QString trialWordsShort(const SheetExercise& exercise);
[[nodiscard]] QString trialAskWords(const SheetExercise& exercise);
[[nodiscard]] QString trialAskWordsShort(const SheetExercise& exercise);  // what is rated, without the questions

}  // namespace steelyard
