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
// Nobody likes to hang pounds beside kilograms: where a gym has both, only what is of the unit asked for is used, as long as
// it reaches, and a load that was made of both (38.84 kg) is still found. Loads come out in the unit of the equipment. Two loads
// within kSameLoad are one load: that is what writing two decimals may hide.
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
        std::vector<Load> plates = {};      // of a stack
        const PlateSearch* hung = nullptr;  // set: plates on a bar or a belt, to be found
    };
    // What loads are made of.
    struct Rungs {
        const PlateSearch* plates = nullptr;  // set: bar or belt
        std::vector<Grid> grids = {};         // otherwise
        MassUnit unit = MassUnit::kg;         // of the plates
    };
    struct Ladder {
        Rungs usual;
        std::optional<Rungs> mixed = {};  // of both units; absent: there is but one
        Mass emptyBar = {};
        bool stack = false;  // grids of a gym's stacks: the pin is known
    };
    [[nodiscard]] Ladder ladderOf(const Variant& variant) const;
    [[nodiscard]] Grid defaultGrid(const Variant& variant) const;
    [[nodiscard]] static std::vector<AddOns> addOnsOf(const LoadRun& run);
    [[nodiscard]] static const Rungs& rungsFor(const Ladder& ladder, Mass limit);
    [[nodiscard]] static std::vector<Load> platesOf(const Spot& spot, const Ladder& ladder);
    [[nodiscard]] static Spot spotOn(const Grid& grid, Mass pin, const AddOns& addOns, bool stack);
    void addPlates(Ladder& ladder, const PlateSearch& all, const PlateSearch& ofOneUnit) const;
    void addRuns(Ladder& ladder, const Variant& variant) const;
    [[nodiscard]] static std::optional<Spot> upTo(const Rungs& rungs, const Ladder& ladder, Mass limit);
    [[nodiscard]] static std::optional<Spot> from(const Rungs& rungs, const Ladder& ladder, Mass limit);
    [[nodiscard]] static std::optional<Spot> upTo(const Ladder& ladder, Mass limit);
    [[nodiscard]] static std::optional<Spot> from(const Ladder& ladder, Mass limit);

    const Gym* m_gym;
    MassUnit m_unit;
    MassUnit m_plateUnit;  // the unit asked for, unless all plates are of the other
    PlateSearch m_barPlates;
    PlateSearch m_barPlatesOfOneUnit;
    PlateSearch m_beltPlates;
    PlateSearch m_beltPlatesOfOneUnit;
};

[[nodiscard]] LoadChoice nearestLoadable(Mass target, const Variant& variant, const Gym* gym, MassUnit unit);
[[nodiscard]] std::optional<Load> nextLoadable(const Load& current, const Variant& variant, const Gym* gym,
                                               MassUnit unit, LoadChange change);
[[nodiscard]] std::vector<Load> loadablesBetween(Mass low, Mass high, const Variant& variant, const Gym* gym,
                                                 MassUnit unit);

}  // namespace steelyard
