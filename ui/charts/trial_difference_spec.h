// How far the arms of a trial are from each other: a row for each pair in the weighed answer, and for each outcome where there are
// two arms, with the 90 % interval around 0. Beside each mark stands how likely the later letter is the better one, and the p
// of the test by the draw where there is one.
//
//   const PanelsSpec spec = buildTrialDifferences(effects, byDraw, arms, QLocale());
//
// Units: points of 10 (yes counts 10); repetitions in their own row, which says so. Discomfort: a higher number is worse, and its
// row says that. Empty without two arms that have values. Pure; no failures.
#pragma once

#include "core/trials/arm_effects.h"
#include "ui/charts/panels_spec.h"

namespace steelyard {

// `byDraw`: the same counted as drawn, for the test; null: none.
[[nodiscard]] PanelsSpec buildTrialDifferences(const TrialEffects& done, const TrialEffects* byDraw, std::size_t arms,
                                               const QLocale& locale);
// "93 %, p 0.06"
[[nodiscard]] QString chanceWords(double chance, const std::optional<RandomisationAnswer>& test);

}  // namespace steelyard
