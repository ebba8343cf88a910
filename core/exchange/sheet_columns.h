// Where our columns stand in a file: for rows of one set each, or of several sets side by side.
//
//   STEELYARD_TRY(const SheetColumns columns, placeColumns(mapping, header));
//   record.fields[columns.row["reps"_column]]
//
// Fails with Invalid: a needed column missing, a header that stands twice, a column that the file hasn't.
#pragma once

#include "core/exchange/logbook_columns.h"
#include "core/exchange/logbook_mapping.h"

namespace steelyard {

struct SheetColumns {
    // In the order of kLogbookColumns; -1: nowhere.
    using Places = std::array<qsizetype, kLogbookColumns.size()>;
    struct Set {
        Places places{};             // with those of the row where the set has none of its own
        qsizetype notation = -1;     // sets in the notation
        std::vector<qsizetype> own;  // when all of these are blank, there is no such set
    };
    Places row{};
    std::vector<Set> sets;  // empty: a row is one set
    qsizetype count = -1;   // how many equal sets a row is

    [[nodiscard]] bool uses(qsizetype column) const;
};

[[nodiscard]] Result<SheetColumns> placeColumns(const LogbookMapping& mapping, const QStringList& header);

}  // namespace steelyard
