// Learns the readings' numbers from a book's own roster and keeps them in it: the work of a background job.
//
//   STEELYARD_TRY(const LearnReport report, learnParameters({path, today}, progress));
//   if (report.version) hub.publish(report.changes);      // every reading changes
//   say(learnSentence(report));
//
// A fit that starts from the day's numbers (reading_numbers.h). It is stored, as one more version in one transaction, only
// when it is better on the lines it saw and on those kept apart. It is no edit: nothing to undo, earlier versions stay.
// Reads and writes through connections of its own; whoever holds the book calls it. Failures: Cancelled (nothing stored),
// Conflict (somebody stored another fit meanwhile), Storage.
#pragma once

#include "core/analysis/parameter_fit.h"
#include "core/storage/transaction.h"

namespace steelyard {

struct LearnRequest {
    QString bookPath;
    QDate asOf;
    FitOptions options;
};

struct LearnReport {
    std::optional<int> version;  // that was stored
    QString kept;                // too_few_lines, no_gain, worse_apart; empty when one was stored
    ReadingParameters before;
    ReadingParameters after;  // the same as before when nothing was stored
    ParameterFit fit;
    int linesApart = 0;
    double apartBefore = 0;  // log likelihood of the lines kept apart
    double apartAfter = 0;
    Changes changes;
};

struct LearnedNumber {
    QString name;
    double before = 0;
    double after = 0;
};

[[nodiscard]] Result<LearnReport> learnParameters(const LearnRequest&, const Progress&);
// For people: what came of it, in a sentence or two.
[[nodiscard]] QString learnSentence(const LearnReport&);
// What differs, by name.
[[nodiscard]] std::vector<LearnedNumber> learnedNumbers(const LearnReport&);

}  // namespace steelyard
