// What a gym can load: bars, plates in pairs, dumbbells, stacks. Kilograms and pounds may mix.
#pragma once

#include "core/domain/library.h"

namespace steelyard {

struct GymBar {
    QString name;  // "20 kg bar"
    Implement implement = Implement::StraightBar;
    Load mass;
    friend bool operator==(const GymBar&, const GymBar&) = default;
};

struct PlatePairs {
    Load plate;  // one plate
    int pairs = 1;
    friend bool operator==(const PlatePairs&, const PlatePairs&) = default;
};

// Loads from first to last in equal steps; all in one unit. A row of dumbbells is a run too.
struct LoadRun {
    QString name;  // "stack A", "dumbbells"
    Load first;
    Load step;
    Load last;
    std::vector<Load> addOns = {};  // small plates that lie on a stack, each used or not; in any unit
    friend bool operator==(const LoadRun&, const LoadRun&) = default;
};

struct Gym {
    QString name;
    std::vector<GymBar> bars;
    std::optional<Load> collarPair;  // both collars together; unknown or none: not part of the load
    std::vector<PlatePairs> plates;
    std::vector<LoadRun> dumbbells;
    std::vector<LoadRun> stacks;
    friend bool operator==(const Gym&, const Gym&) = default;
};

[[nodiscard]] Problems validate(const Gym&);

// The bar, sled or lever that a variant is done with in a gym. Bars belong to the gym: the one of this implement nearest to
// the variant's usual bar. A machine brings its own lever: the gym's only where it is about the same (kSameLeverShare),
// else the variant's. Without a gym, or when the gym lists none: the variant's.
inline constexpr double kSameLeverShare = 0.1;  // our convention
[[nodiscard]] std::optional<Load> barFor(const Gym* gym, const Variant& variant);

}  // namespace steelyard
