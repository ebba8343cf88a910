// How days, numbers and masses stand in sentences for people. Core makes the sentences, and whoever shows them says how:
// the screen by its locale (ui/format), the console and files as they are by default.
//
//   const Wording plain;                             // ISO days, a point for decimals, masses in the lifter's own unit
//   plain.day(date)                                  == "2027-03-01"
//   plain.mass(42.5, MassUnit::lb)                   == "93.7 lb"
//   Wording{.unit = MassUnit::kg}.mass(42.5, MassUnit::lb) == "42.5 kg"
//
// Units: masses come in kilograms. Numbers have at most the decimals asked for and no trailing zeros. Failures: none; an
// invalid day is empty.
#pragma once

#include "core/base/load.h"

#include <QtCore/QDate>
#include <QtCore/QLocale>

namespace steelyard {

struct Wording {
    QLocale locale = QLocale::c();
    QString datePattern = QStringLiteral("yyyy-MM-dd");
    QChar minus = u'-';
    std::optional<MassUnit> unit;  // for everybody; absent: the lifter's own

    friend bool operator==(const Wording&, const Wording&) = default;

    [[nodiscard]] QString day(QDate) const;
    [[nodiscard]] QString number(double value, int mostDecimals = 1) const;
    [[nodiscard]] QString fixed(double value, int decimals) const;  // trailing zeros kept
    [[nodiscard]] QString load(const Load&) const;                  // as it was typed, in its unit
    // The unit that masses are shown in to a lifter who counts in `own`, and a mass in it.
    [[nodiscard]] MassUnit unitFor(MassUnit own) const { return unit.value_or(own); }
    [[nodiscard]] double massIn(double kilograms, MassUnit own) const;
    [[nodiscard]] QString mass(double kilograms, MassUnit own, int mostDecimals = 1) const;
};

}  // namespace steelyard
