// All rows of a logbook file as values, and what is wrong with the others: which line, which column, what stood there, and how to
// mend it. Nothing here looks at a book. A file of any size is read row by row instead: logbook_reader.h.
#pragma once

#include "core/base/progress.h"
#include "core/domain/logbook.h"
#include "core/exchange/logbook_mapping.h"

#include <vector>

namespace steelyard {

struct LogbookRow {
    int line = 0;      // in the file
    qsizetype at = 0;  // of its first character in ParsedLogbook::text
    QDate date;
    QString athlete;
    QString exercise;
    QString variant;   // empty: the exercise's default
    QString grip;      // empty: the variant's usual one
    QString standard;  // empty: the variant's default
    SetEntry set;
    bool numberGiven = false;
    bool unitGiven = false;  // else the load is taken in the athlete's unit
    ExerciseRating rating;
};

struct RowProblem {
    int line = 0;
    QString column;  // ours; empty: the whole row
    QString value;
    QString text;
    int source = -1;  // column of the file, from 0; -1: the row as a whole
    QString theirs;   // what the file calls that column, unless it is `column`
    friend bool operator==(const RowProblem&, const RowProblem&) = default;
};

struct ParsedLogbook {
    QStringList header;  // as in the file
    QChar separator = u',';
    TextEncoding encoding = TextEncoding::Utf8;
    bool hasHeader = true;             // else `header` holds numbers from 1
    QString text;                      // the whole file, to say what stood in a row that is refused later; may be empty
    std::vector<LogbookRow> rows;      // good ones, in file order
    std::vector<RowProblem> problems;  // in file order
    std::vector<CsvRecord> badRecords;   // the rows they belong to
    std::vector<RowProblem> passedOver;  // rows that are no sets and not wrong: totals
    QStringList unknownColumns;          // kept as notes
};

// The column that rows set aside get at the end. Reading passes over it, so that mended rows come in as they are.
inline constexpr QLatin1StringView kProblemColumn{"problem"};

// `today` bounds the dates. Fails when the file as a whole can't be read: encoding, quoting, a needed column missing, a column twice.
[[nodiscard]] Result<ParsedLogbook> parseLogbook(const QByteArray& bytes, const LogbookMapping&, QDate today,
                                                 const Progress&);
// A good row as it stands in the file; without fields when the rows come from no file.
[[nodiscard]] CsvRecord recordOf(const ParsedLogbook&, const LogbookRow&);
// "line 7, column reps, “ten”: ..."
[[nodiscard]] QString toText(const RowProblem&);

}  // namespace steelyard
