// Ratings of lines that were trained anyway, beside each other: of every outcome the level of each line with its 90 % interval, a row a
// line. An everyday comparison, not a trial: its words always say so, with what else differed.
//
//   const PanelsSpec spec = buildEveryday(compareEveryday(log, lines, span), names, QLocale());
//   everydayWords(comparison)           for below it
//
// Ratings share the scale 0-10. Empty where no two lines share an outcome. Pure; no failures.
#pragma once

#include "core/trials/everyday_comparison.h"
#include "ui/charts/panels_spec.h"

namespace steelyard {

[[nodiscard]] PanelsSpec buildEveryday(const EverydayComparison&, const std::vector<QString>& names, const QLocale&);
[[nodiscard]] QString everydayWords(const EverydayComparison&);

}  // namespace steelyard
