// What stands in one cell of a logbook file: dates, numbers, loads with a unit behind them, marks for "nothing".
//
//   readDateCell(u"3/4/2026 18:30", DateOrder::MonthDayYear) == QDate(2026, 3, 4)
//   readLoadCell(u"42,5 kg", {u','})                          == 42.5 and kilograms
//
// Cells come without spaces at their ends. Nothing here fails: what a cell can't mean is absent.
#pragma once

#include "core/exchange/logbook_mapping.h"

#include <QtCore/QDate>

namespace steelyard {

struct NumberStyle {
    QChar decimalMark = u'.';
    // Either mark is read where only one stands and one or two digits behind it; 8.0 is whole. Three digits may be grouping.
    bool byHand = false;
};

struct LoadCell {
    Decimal amount;
    std::optional<MassUnit> unit;
    friend bool operator==(const LoadCell&, const LoadCell&) = default;
};

// Year, month and day in that order, as digits with - / or . between them, and a time of day behind it or not, which is left
// out. Two digits of a year are only read where it stands last: 69 to 99 are of the 1900s (POSIX, strptime %y).
[[nodiscard]] std::optional<QDate> readDateCell(QStringView cell, DateOrder order);
// The three numbers of a date as they stand, whatever their order.
[[nodiscard]] std::optional<std::array<int, 3>> datePartsOf(QStringView cell);
// "year, month, day".
[[nodiscard]] QString orderInWords(DateOrder order);
[[nodiscard]] std::optional<Decimal> readNumberCell(QStringView cell, NumberStyle style);
[[nodiscard]] std::optional<int> readWholeCell(QStringView cell, NumberStyle style);
// By hand, "bodyweight" and "bw" are no load at all.
[[nodiscard]] std::optional<LoadCell> readLoadCell(QStringView cell, NumberStyle style);
[[nodiscard]] std::optional<MassUnit> readUnitCell(QStringView cell);
// A dash or n/a, by which people say that there is nothing.
[[nodiscard]] bool isNothingMark(QStringView cell);
// "Total", "Summe": the row adds up others. In English, German, French and Spanish.
[[nodiscard]] bool isTotalsLabel(QStringView cell);

}  // namespace steelyard
