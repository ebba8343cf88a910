// One exercise of a sheet as a block that is laid out on its own and then put on a page: what to do at the left, the boxes to
// write in at the right in the order in which they are keyed, and what else is to be said below.
//
//   const ExerciseBlock block = layOutExercise({exercise, width, Density::Full, exercise.firstSet, exercise.sets});
//
// At the left stands what must be seen from a distance: name, load, repetitions, the discs. Smaller words follow it while there
// is room beside the boxes; the others run over the whole width, where a sentence takes the fewest lines.
#pragma once

#include "ui/print/sheet_layout.h"

namespace steelyard {

enum class Density {
    Full,   // every sentence
    Tight,  // without the reasons
    Close,  // one paragraph below the boxes, cues without headings, labels once a page
};

struct ExerciseBlock {
    SheetPage items;  // from (0, 0)
    double height = 0;
    int noteLines = 0;    // below the boxes
    int neededLines = 1;  // of these, from the first: what may not be cut
};

struct BlockInput {
    const SheetExercise& exercise;
    double width = 190;
    Density density = Density::Full;
    int firstSet = 1;
    int sets = 1;
    bool continued = false;   // further rows of an exercise with very many sets
    bool labels = true;       // over the boxes for sets
    int mostNoteLines = 100;  // Close: the paragraph's end is cut
};

[[nodiscard]] ExerciseBlock layOutExercise(const BlockInput& input);

struct BoxColumn {
    QString label;
    double width;
};
// The boxes of one set: its number, load, repetitions, off standard with marks, reserve.
[[nodiscard]] std::vector<BoxColumn> setColumns(MassUnit unit);
// Labels, where wanted, and a row of boxes a set, from (left, top) on. Gives where they end.
double writeSetBoxes(SheetPage& page, QPointF at, const std::vector<BoxColumn>& columns, int firstSet, int sets,
                     bool labels);
[[nodiscard]] double widthOf(const std::vector<BoxColumn>& columns);
// Load and repetitions, large: beside each other where they fit, else one below the other.
double writePlainTarget(SheetPage& page, const QRectF& column, double top, const SheetExercise& exercise);
// Load and repetitions, large, with the discs drawn at their right where there are any. Gives where they end.
double writeTarget(SheetPage& page, const QRectF& column, double top, const SheetExercise& exercise);

}  // namespace steelyard
