// How somebody's delimited logbook becomes ours: encoding, separator, decimal mark, order of dates, and which of their
// columns is which of ours. Without a mapping a file is taken as the logbook CSV itself.
//
// As a file (JSON; every key but format may be left out):
//   {"format": 1, "encoding": "windows-1252", "separator": ";", "decimal": ",", "date_order": "dmy", "header": true,
//    "unit": "lb", "columns": {"date": "Datum", "athlete": 2, ...}, "fixed": {"exercise": "Arm curl"}}
// A column is named by its header or by its number from 1. `fixed` gives a value to rows that have no such column.
#pragma once

#include "core/exchange/csv_reader.h"

#include <map>
#include <variant>

namespace steelyard {

enum class DateOrder { YearMonthDay, DayMonthYear, MonthDayYear };

struct LogbookMapping {
    TextEncoding encoding = TextEncoding::Utf8;
    QChar separator = u',';
    QChar decimalMark = u'.';
    DateOrder dateOrder = DateOrder::YearMonthDay;
    bool hasHeader = true;
    std::optional<MassUnit> unit;                           // of rows that don't say; else the athlete's
    std::map<QString, std::variant<QString, int>> columns;  // ours -> theirs; empty: headers are ours
    std::map<QString, QString> fixed;                       // ours -> value
};

// Ours, in the order in which they are written: date, athlete, exercise, ... note.
[[nodiscard]] const QStringList& logbookColumns();
[[nodiscard]] Result<LogbookMapping> readMapping(const QByteArray& json);
// A proposal from the beginning of a file, for a person to look at: never applied unseen.
[[nodiscard]] LogbookMapping guessMapping(const QByteArray& beginning);

template <>
struct EnumText<DateOrder> {
    static constexpr auto table = std::to_array<EnumKey<DateOrder>>(
        {{DateOrder::YearMonthDay, "ymd"}, {DateOrder::DayMonthYear, "dmy"}, {DateOrder::MonthDayYear, "mdy"}});
};

}  // namespace steelyard
