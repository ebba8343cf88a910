// The cells in which an exercise is rated, in the order in which they are asked: as they stand on the sheet.
//
//   for (const RatingCell cell : afterExercise()) ...       tension, burn, pump, what gave out first, then the joints
//   putScore(rating, RatingCell::Burn, 7);                  scoreOf(rating, RatingCell::Burn) == 7
//   findMuscle(choices, u"tri")                             the triceps; u"t" alone is the target
//
// Scores are whole numbers from 0 to 10 or not given. Pure; no failures.
#pragma once

#include "core/domain/library.h"
#include "core/domain/logbook.h"

#include <span>

namespace steelyard {

enum class RatingCell {
    Tension,
    Burn,
    Pump,
    GaveOut,  // the one without a score
    Elbow,
    Shoulder,
    Wrist,
    LowerBack,
    Hip,
    Knee,
    Neck,
    Ankle,
    NextSoreness,
    NextWeakness,
};

// Without the joints of a lifter who has not agreed that discomfort is kept.
[[nodiscard]] std::span<const RatingCell> afterExercise(bool discomfort = true);
[[nodiscard]] std::span<const RatingCell> dayAfter();

[[nodiscard]] std::optional<Joint> jointOf(RatingCell);
[[nodiscard]] std::optional<int> scoreOf(const ExerciseRating&, RatingCell);
void putScore(ExerciseRating&, RatingCell, std::optional<int>);
// The letter that goes to a joint's cell: e, s, w, b (lower back), h, k, n, a.
[[nodiscard]] QChar letterOf(Joint);

struct MuscleChoice {
    QString key;  // as it is stored
    QString name;
    friend bool operator==(const MuscleChoice&, const MuscleChoice&) = default;
};

// The target first, then the exercise's helpers by their share, then all others by name.
[[nodiscard]] std::vector<MuscleChoice> muscleChoices(const Library&, const Exercise*);
// The first whose name begins with what was typed, else the first with a word that does; case and accents make no difference.
[[nodiscard]] std::optional<std::size_t> findMuscle(std::span<const MuscleChoice>, QStringView typed);

}  // namespace steelyard
