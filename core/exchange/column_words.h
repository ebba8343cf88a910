// What people head the columns of a training log with, and how well a heading fits one of our columns.
//
//   columnFit(u"Gewicht (kg)")     {"load", 100}
//   columnFit(u"Excercise")        {"exercise", 60}: by likeness
//
// Common words of the trade in English, German, French and Spanish. Case, accents, units and what stands in brackets make no
// difference.
#pragma once

#include "core/base/load.h"

#include <QtCore/QStringList>

#include <optional>

namespace steelyard {

struct ColumnFit {
    QString column;  // ours; kCountColumn for "how many sets"
    int points = 0;  // kSureFit: this is its name; less: like it
    friend bool operator==(const ColumnFit&, const ColumnFit&) = default;
};
inline constexpr int kSureFit = 90;

// Nothing: no column of ours is called like this.
[[nodiscard]] std::optional<ColumnFit> columnFit(QStringView heading);
// The words of a heading, folded, without what stands in brackets: "Set 1 (kg)" -> set, 1.
[[nodiscard]] QStringList headingWords(QStringView heading);
// "kg" or "lbs" among its words, brackets included.
[[nodiscard]] std::optional<MassUnit> unitInHeading(QStringView heading);
// "set", "Satz", "serie".
[[nodiscard]] bool isSetWord(const QString& word);

}  // namespace steelyard
