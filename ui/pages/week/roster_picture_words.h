// What the picture of the roster draws, in words: for tool tips, for reading aloud and for copying. One line a thing.
#pragma once

#include "core/flags/athlete_review.h"

#include <QtCore/QStringList>

namespace steelyard {

// Null-free, in the summary's order.
[[nodiscard]] std::vector<const LineReview*> mainLinesOf(const AthleteReview& review);
// "Arm curl, straight bar, supinated".
[[nodiscard]] QString lineWords(const LineReview& line);
// The exercise alone where no other of these lines has the same; else what tells them apart comes first.
[[nodiscard]] QString shortLineName(const std::vector<const LineReview*>& lines, std::size_t index);
enum class AimFit { NoAim, Under, Within, Over };
[[nodiscard]] AimFit aimFit(const WeeklyMuscleSets& sets);
// Outside the lifter's aims first, then as in the summary.
[[nodiscard]] std::vector<const WeeklyMuscleSets*> setsByUrgency(const AthleteReview& review);

[[nodiscard]] QStringList verdictLines(
    const AthleteReview& review);  // "▼ Arm curl, straight bar: slipping, 42.5 kg (41.0 to 44.0)"
[[nodiscard]] QStringList setLines(const AthleteReview& review);         // "biceps 4.3 (8–16), too few"
[[nodiscard]] QStringList discomfortLines(const AthleteReview& review);  // "elbow 6 of 10, 3 Mar"
[[nodiscard]] QStringList sessionLines(const AthleteReview& review);     // "week to 1 Mar: 2 of 3"

}  // namespace steelyard
