// Which plates make a load, from the plates that are there: exact, not greedy.
//
//   const PlateSearch plates(gym.plates);                                  // once a gym
//   const PlateLoading found = plates.nearest(target, bar, collars);
//   found.perSide == {25 kg, 10 kg, 2.5 kg, 1.25 kg};   found.exact() == true
//
// Finds the total nearest to the target; among equals the fewest plates, then the lighter total, then the heaviest
// plates first. Kilogram and pound plates mix without rounding (see quantity.h). The same input always gives the same
// plates.
// Greedy picking is right for a competition set and wrong in general: one pair of 20 and two pairs of 15 make 30 a
// side only as 15 + 15.
//
// Cost: making a PlateSearch lists the sums that the plates reach (some thousands for a gym's plates, a few
// milliseconds); asking it walks that list once. Make one a gym and keep it.
#pragma once

#include "core/domain/gym.h"

#include <optional>
#include <span>
#include <vector>

namespace steelyard {

struct PlateLoading {
    Mass total;                 // bar, collars and plates
    std::vector<Load> perSide;  // heaviest first, that is from the inside out; on a belt: all of them
    Mass error;                 // total - target: below zero when lighter than asked
    std::optional<Mass> below;  // when not exact: nearest total under the target; absent: the bar is heavier
    std::optional<Mass> above;  // when not exact: nearest total over it; absent: the plates don't reach
    [[nodiscard]] bool exact() const { return error == Mass(); }
    // The target is under the empty bar, so the empty bar is the answer.
    [[nodiscard]] bool underEmptyBar() const { return !exact() && !below; }
};

class PlateSearch {
public:
    enum class Hang {
        InPairs,  // one of each pair on each side of a bar
        Singly,   // any number of single plates, as on a belt: a pair counts as two
    };
    explicit PlateSearch(std::span<const PlatePairs> inventory, Hang hang = Hang::InPairs);

    [[nodiscard]] PlateLoading nearest(Mass target, Mass bar, Mass collarPair = Mass()) const;
    // Reachable totals next to a limit, the limit itself included.
    [[nodiscard]] std::optional<Mass> heaviestUpTo(Mass limit, Mass emptyBar) const;
    [[nodiscard]] std::optional<Mass> lightestFrom(Mass limit, Mass emptyBar) const;
    // The plates behind a reachable total; empty when the total is the empty bar or can't be reached.
    [[nodiscard]] std::vector<Load> platesFor(Mass total, Mass emptyBar) const;
    [[nodiscard]] bool hasPlates() const { return !m_kilogram.plates.empty() || !m_pound.plates.empty(); }

private:
    struct Sum {
        std::int64_t steps;
        int plates;  // fewest that make it
    };
    // Plates of one unit, heaviest first; layers[i] holds the sums, ascending, that plates i and lighter reach.
    // The units are kept apart because their sums hardly ever coincide: listing all sums of both together would
    // multiply two short lists.
    struct Rack {
        std::vector<PlatePairs> plates;
        std::vector<std::vector<Sum>> layers;
    };
    struct Split {
        std::int64_t kilogramSteps;
        std::int64_t poundSteps;
    };
    static Rack makeRack(std::span<const PlatePairs> inventory, MassUnit unit, int perPair);
    static void addPlates(const Rack& rack, std::int64_t steps, std::vector<Load>& plates);
    [[nodiscard]] std::optional<Split> splitUpTo(std::int64_t side) const;
    [[nodiscard]] std::optional<Split> splitFrom(std::int64_t side) const;
    [[nodiscard]] std::vector<Load> platesOf(Split split) const;

    Rack m_kilogram;
    Rack m_pound;
    int m_sides;
};

// One question without keeping the search.
[[nodiscard]] PlateLoading loadPlates(Mass target, Mass bar, std::optional<Mass> collarPair,
                                      std::span<const PlatePairs> inventory);

}  // namespace steelyard
