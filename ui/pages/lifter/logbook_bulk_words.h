// What a change of many sets would do, in words: one sentence, the rows of its preview, and what is in its way.
//
//   const BulkWords words = bulkWords(plan, library);
//   words.says == "To the other line: 18 sets of 6 sessions. With 1 rating.";   words.rows[0].after == "10 sessions, 30 sets";
#pragma once

#include "core/edits/bulk_edits.h"

#include <QtCore/QStringList>

namespace steelyard {

struct BulkPreviewRow {
    QString what;
    QString before;
    QString after;
};

struct BulkWords {
    QString says;
    QStringList titles;  // of the preview's three columns
    std::vector<BulkPreviewRow> rows;
    QStringList problems;  // none: it can be done
};

[[nodiscard]] BulkWords bulkWords(const MovePlan& plan, const Library& library);
[[nodiscard]] BulkWords bulkWords(const ShiftPlan& plan);
[[nodiscard]] BulkWords bulkWords(const RenamePlan& plan);
// "Arm curl, straight bar, supinated · strict": unlike names of one lifter's lines are unlike.
[[nodiscard]] QString wholeLineName(const LiftLine& line, const Library& library);

}  // namespace steelyard
