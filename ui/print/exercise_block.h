// One exercise of a sheet as a block that is laid out on its own and then put on a page: texts at the left, the boxes
// to write in at the right.
#pragma once

#include "ui/print/sheet_layout.h"

namespace steelyard {

enum class Density { Full, Tight };  // Tight leaves the reasons out, so that more fits a page

struct ExerciseBlock {
    SheetPage items;  // from (0, 0)
    double height = 0;
};

struct BlockInput {
    const SheetExercise& exercise;
    double width = 190;
    Density density = Density::Full;
    int firstSet = 1;
    int sets = 1;
    bool continued = false;  // further rows of an exercise with very many sets
};

[[nodiscard]] ExerciseBlock layOutExercise(const BlockInput& input);
// Puts a block's items on a page.

}  // namespace steelyard
