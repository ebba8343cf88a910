// The words of a sheet: numbers, dates and units as people read them, and sentences made of a sheet's values.
//
//   sheetLoad(load)                      "42.5 kg"
//   platesPerSide({25 kg, 10 kg, ...})   "25 + 10 + 2.5 + 1.25 per side"
//
// Decimals follow the locale. Loads lose zeros at their end here, because paper is read from a distance.
#pragma once

#include "core/sheets/session_sheet.h"

#include <QtCore/QStringList>

namespace steelyard {

[[nodiscard]] QString sheetNumber(double value);
[[nodiscard]] QString sheetLoad(const Load& load);
[[nodiscard]] QString sheetDate(QDate date);       // "Monday 1 March 2027"
[[nodiscard]] QString sheetWeekday(QDate date);    // "Monday 1 March"
[[nodiscard]] QString sheetShortDate(QDate date);  // "1 Mar 2027"

[[nodiscard]] QString weekWords(const SessionSheet& sheet);  // "week 3 of 6, deload"; empty: nothing to say
[[nodiscard]] QString headOf(const SessionSheet& sheet);     // title, gym, where the exercises come from
[[nodiscard]] QString setLegend();                           // what goes into the boxes of a set
[[nodiscard]] QString cautionWords(const SheetCaution& caution);
[[nodiscard]] QString coachNoteWords(const CoachNote& note);
[[nodiscard]] QString coachNotesWords(const SheetExercise& exercise);  // one after the other; empty: none
[[nodiscard]] QString nameOf(const SheetExercise& exercise);           // with its turn: "A1 Arm curl"
[[nodiscard]] QStringList detailParts(const SheetExercise& exercise);
[[nodiscard]] QString detailOf(const SheetExercise& exercise);      // variant, grip, standard; "as usual" is left out
[[nodiscard]] QString loadWords(const SheetExercise& exercise);     // "42.5 kg", "24 kg each hand"
[[nodiscard]] QString repsWords(const SheetExercise& exercise);     // "3 × 10", "10 · 9 · 9", "3 × 8–12"
[[nodiscard]] QString reserveWords(const SheetExercise& exercise);  // "RIR 2", "RIR 2 as last time", empty
[[nodiscard]] QString loadingWords(const SheetLoad& load);          // plates, bar, pin; empty: nothing to say
[[nodiscard]] QString setUpWords(const SheetExercise& exercise);    // the reserve and the loading
[[nodiscard]] QString cantMakeWords(const SheetLoad& load);         // empty when the load can be made exactly
[[nodiscard]] QString toBeatWords(const SheetExercise& exercise);
[[nodiscard]] QString warmUpWords(const SheetExercise& exercise);  // empty: none
[[nodiscard]] QString cueWords(const SheetExercise& exercise);     // in one paragraph
// For a page that is full: without units that the boxes have, without the year, without discs that are drawn.
[[nodiscard]] QString setUpWordsShort(const SheetExercise& exercise);
[[nodiscard]] QString toBeatWordsShort(const SheetExercise& exercise);
[[nodiscard]] QString warmUpWordsShort(const SheetExercise& exercise);
[[nodiscard]] QString cueWordsShort(const SheetExercise& exercise);  // without their headings
[[nodiscard]] QString noteWords(const SheetExercise& exercise);      // of the plan
[[nodiscard]] QString whyWords(const SheetExercise& exercise);
[[nodiscard]] QString afterwardsWords(const SheetExercise& exercise);

}  // namespace steelyard
