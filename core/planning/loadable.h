// The loads that can really be set: on this implement, in this gym.
//
//   LoadFinder loads(&gym, MassUnit::kg);                      // keep it: it remembers the gym's plate sums
//   loads.nearest(target, variant).load                        == 42.5 kg
//   loads.next(*load, variant, LoadChange::Harder)             == 45 kg
//
// By what the logged number means: BarTotal takes the gym's plates and collars; PerHand its dumbbells; Stack its
// stacks (those with the variant's step, when there are any) with the small plates that lie on them, each used or not; Added the variant's step, else single plates on a belt;
// Assisted the variant's step. Where the gym doesn't say: steps of variant.step, else kDefaultStep.
//
// Loads come out in the unit asked for where plates of both kinds may mix, else in the unit of the equipment. Two
// loads within kSameLoad are one load: that is what writing two decimals may hide.
// Exact over what is there. Limit: kMostAddOns small plates a stack (more make no finer steps); the lightest are left out.
// The gym must outlive the finder. Not for use from several threads at once.
#pragma once

#include "core/planning/plate_loading.h"

namespace steelyard {

enum class LoadChange { Harder, Easier };  // for Assisted, harder is less help: the number falls

inline constexpr Mass kSameLoad = massFromGrams(5);
inline constexpr std::size_t kMostAddOns = 8;

struct LoadChoice {
    Load load;                         // nearest that can be set
    Mass total;                        // the same, unrounded
    std::vector<Load> plates;          // BarTotal: on each side; Added: on the belt; Stack: on it; heaviest first
    std::optional<Load> pin;           // Stack of a gym: where the pin goes, without what lies on it
    bool exact = false;                // within kSameLoad of the target
    std::optional<Load> below, above;  // when not exact: the neighbours, where there are any
    bool underEmptyBar = false;        // the target is under the lightest that the bar allows
};

class LoadFinder {
public:
    explicit LoadFinder(const Gym* gym, MassUnit unit);

    [[nodiscard]] LoadChoice nearest(Mass target, const Variant& variant) const;
    // The next load that can be set, from a load that needn't itself be one. nullopt: there is none.
    [[nodiscard]] std::optional<Load> next(const Load& current, const Variant& variant, LoadChange change) const;
    // Every load from low to high, both included, lightest first; at most `most`.
    [[nodiscard]] std::vector<Load> between(Mass low, Mass high, const Variant& variant, std::size_t most = 500) const;

private:
    // Small plates of one stack that lie on it together.
    struct AddOns {
        Mass sum;
        std::vector<Load> plates;  // heaviest first
    };
    struct Grid {
        Mass first;
        Mass step;
        std::optional<Mass> last;
        MassUnit unit;
        std::vector<AddOns> addOns;  // by sum, each once with its fewest plates; the first is none
    };
    struct Spot {
        Mass mass;
        MassUnit unit;
        std::optional<Load> pin = {};
        std::vector<Load> plates = {};
    };
    struct Ladder {
        const PlateSearch* plates = nullptr;  // set: bar or belt
        Mass emptyBar;
        std::vector<Grid> grids;  // otherwise
        bool stack = false;       // grids of a gym's stacks: the pin is known
    };
    [[nodiscard]] Ladder ladderOf(const Variant& variant) const;
    [[nodiscard]] Grid defaultGrid(const Variant& variant) const;
    [[nodiscard]] static std::vector<AddOns> addOnsOf(const LoadRun& run);
    [[nodiscard]] static Spot spotOn(const Grid& grid, Mass pin, const AddOns& addOns, bool stack);
    [[nodiscard]] std::optional<Spot> upTo(const Ladder& ladder, Mass limit) const;
    [[nodiscard]] std::optional<Spot> from(const Ladder& ladder, Mass limit) const;

    const Gym* m_gym;
    MassUnit m_unit;
    PlateSearch m_barPlates;
    PlateSearch m_beltPlates;
};

[[nodiscard]] LoadChoice nearestLoadable(Mass target, const Variant& variant, const Gym* gym, MassUnit unit);
[[nodiscard]] std::optional<Load> nextLoadable(const Load& current, const Variant& variant, const Gym* gym,
                                               MassUnit unit, LoadChange change);
[[nodiscard]] std::vector<Load> loadablesBetween(Mass low, Mass high, const Variant& variant, const Gym* gym,
                                                 MassUnit unit);

}  // namespace steelyard
