// How somebody's delimited logbook becomes ours: encoding, separator, decimal mark, order of dates, which of their columns
// is which of ours, and which of their exercises. Without a mapping a file is taken as the logbook CSV itself.
//
// As a file (JSON; every key but format may be left out):
//   {"format": 1, "encoding": "windows-1252", "separator": ";", "decimal": ",", "date_order": "dmy", "header": true,
//    "skip": 2, "unit": "lb", "by_hand": true, "columns": {"date": "Datum", "athlete": 2, ...},
//    "fixed": {"exercise": "Arm curl"}, "sets": [{"load": "Set 1 kg", "reps": "Set 1 reps"}, {"notation": 7}],
//    "exercises": [{"name": "Curl KH", "variant": "", "is": {"exercise": "Arm curl", "variant": "dumbbells, upright"}}]}
// A column is named by its header or by its number from 1. `fixed` gives a value to rows that have no such column, `skip`
// passes over rows before the header. `sets` are the columns of a sheet with several sets in a row, set by set: what a set
// doesn't name comes from `columns`. A notation column holds sets as core/keying/set_notation.h writes them. A column "sets"
// says how many equal sets a row stands for.
//
// `by_hand` reads what people write into spreadsheets: a lone dash or n/a is blank, a row of totals or without anything is
// passed over, 8.0 is a whole number, empty cells may stand behind the last column.
#pragma once

#include "core/base/load.h"
#include "core/exchange/csv_reader.h"

#include <map>
#include <tuple>
#include <variant>
#include <vector>

namespace steelyard {

enum class DateOrder { YearMonthDay, DayMonthYear, MonthDayYear };

using ColumnName = std::variant<QString, int>;      // by header, or by number from 1
using ColumnNames = std::map<QString, ColumnName>;  // ours -> theirs

// What an exercise is called, in a file or here. The variant may be empty: none was said.
struct ExerciseName {
    QString exercise;
    QString variant;
    friend bool operator==(const ExerciseName&, const ExerciseName&) = default;
    friend bool operator<(const ExerciseName& a, const ExerciseName& b)
    {
        return std::tie(a.exercise, a.variant) < std::tie(b.exercise, b.variant);
    }
};

struct LogbookMapping {
    TextEncoding encoding = TextEncoding::Utf8;
    QChar separator = u',';
    QChar decimalMark = u'.';
    DateOrder dateOrder = DateOrder::YearMonthDay;
    bool hasHeader = true;
    bool byHand = false;
    int skip = 0;                                    // rows before the header
    std::optional<MassUnit> unit;                    // of rows that don't say; else the athlete's
    ColumnNames columns;                             // empty: headers are ours
    std::map<QString, QString> fixed;                // ours -> value
    std::vector<ColumnNames> sets;                   // of a row with several sets, in their order
    std::map<ExerciseName, ExerciseName> exercises;  // theirs -> ours; what isn't here keeps its name
    std::map<QString, QString> athletes;             // theirs -> ours; never part of a file, since it is about people
    friend bool operator==(const LogbookMapping&, const LogbookMapping&) = default;
};

// In the mapping's `sets`: a column with sets as the set notation writes them.
inline constexpr QLatin1StringView kNotationColumn{"notation"};

// In the mapping's `columns`: how many equal sets a row stands for.
inline constexpr QLatin1StringView kCountColumn{"sets"};

// Ours, in the order in which they are written: date, athlete, exercise, ... note.
[[nodiscard]] const QStringList& logbookColumns();
[[nodiscard]] Result<LogbookMapping> readMapping(const QByteArray& json);
// What readMapping() reads back as the same mapping, but for `athletes`.
[[nodiscard]] QByteArray writeMapping(const LogbookMapping&);

template <>
struct EnumText<DateOrder> {
    static constexpr auto table = std::to_array<EnumKey<DateOrder>>(
        {{DateOrder::YearMonthDay, "ymd"}, {DateOrder::DayMonthYear, "dmy"}, {DateOrder::MonthDayYear, "mdy"}});
};

}  // namespace steelyard
