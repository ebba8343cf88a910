// The lifters of the invented club: who they are and how they keep their log. No real person. All agreed that discomfort is kept.
//
//   const Athlete athlete = inventAthlete({index, lastDay, library, gyms}, random);     // the same for the same seed
//
// Units: those of the values. No failures.
#pragma once

#include "core/domain/gym.h"
#include "core/samples/club_training.h"

namespace steelyard {

struct ClubPlace {
    int index = 0;  // of the lifter; the first 600 have names of their own
    QDate lastDay;
    const Library& library;
    const std::vector<Row<Gym>>& gyms;
};

[[nodiscard]] Athlete inventAthlete(const ClubPlace& place, ClubRandom& random);
[[nodiscard]] LifterHabits inventHabits(ClubRandom& random);
// One-repetition strength of an untrained adult on a lift for this muscle, kilograms; an assumption of the sample only.
[[nodiscard]] double usualStrengthKg(const QString& muscle);

}  // namespace steelyard
