// Which column of a file is which of ours: by headings, and what these leave open by what stands in the cells.
#pragma once

#include "core/exchange/logbook_guess.h"

namespace steelyard {

// The first rows of a file, all as wide as its header.
struct SampleRows {
    QStringList header;  // empty headings where the file has none
    std::vector<QStringList> rows;

    // What stands in a column, without blanks and marks for nothing.
    [[nodiscard]] QStringList cells(qsizetype column) const;
};

// Several sets side by side: "Set 1 kg", "Set 1 reps", "Set 2 kg" ..., "Set 1", "Set 2" ... or kg, reps, kg, reps ...
// Empty: one set a row.
[[nodiscard]] std::vector<ColumnNames> guessSets(const SampleRows& sample);
// Fills mapping.columns and hints of the guess; columns of mapping.sets are taken already.
void guessColumns(const SampleRows& sample, const KnownNames& known, LogbookGuess& guess);

}  // namespace steelyard
