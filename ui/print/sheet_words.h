// The words of a sheet: numbers, dates and units as people read them, and sentences made of a sheet's values.
//
//   sheetLoad(load)                      "42.5 kg"
//   platesPerSide({25 kg, 10 kg, ...})   "25 + 10 + 2.5 + 1.25 per side"
//
// Decimals follow the locale. Loads lose zeros at their end here, because paper is read from a distance.
#pragma once

#include "core/sheets/session_sheet.h"

namespace steelyard {

[[nodiscard]] QString sheetNumber(double value);
[[nodiscard]] QString sheetLoad(const Load& load);
[[nodiscard]] QString sheetDate(QDate date);       // "Monday 1 March 2027"
[[nodiscard]] QString sheetShortDate(QDate date);  // "1 Mar 2027"

[[nodiscard]] QString headOf(const SessionSheet& sheet);  // title, gym, where the exercises come from
[[nodiscard]] QString cautionWords(const SheetCaution& caution);
[[nodiscard]] QString coachNoteWords(const CoachNote& note);
[[nodiscard]] QString coachNotesWords(const SheetExercise& exercise);  // one after the other; empty: none
[[nodiscard]] QString detailOf(const SheetExercise& exercise);      // variant, grip, standard; "as usual" is left out
[[nodiscard]] QString loadWords(const SheetExercise& exercise);     // "42.5 kg", "24 kg each hand"
[[nodiscard]] QString repsWords(const SheetExercise& exercise);     // "3 × 10", "10 · 9 · 9", "3 × 8–12"
[[nodiscard]] QString reserveWords(const SheetExercise& exercise);  // "RIR 2", "RIR 2 as last time", empty
[[nodiscard]] QString setUpWords(const SheetLoad& load);            // plates, bar, pin; empty: nothing to say
[[nodiscard]] QString cantMakeWords(const SheetLoad& load);         // empty when the load can be made exactly
[[nodiscard]] QString toBeatWords(const SheetExercise& exercise);
[[nodiscard]] QString warmUpWords(const SheetExercise& exercise);  // empty: none
[[nodiscard]] QString cueWords(const SheetExercise& exercise);     // in one paragraph
[[nodiscard]] QString whyWords(const SheetExercise& exercise);
[[nodiscard]] QString afterwardsWords(const SheetExercise& exercise);

}  // namespace steelyard
