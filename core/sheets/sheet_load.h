// A load as it is set up: on the bar of this gym, by its plates, or as a pin, a dumbbell, a belt or a counterweight.
//
//   const SheetEquipment equipment(gym, MassUnit::kg);                 // once a gym and unit
//   equipment.setUp(*Load::parse(u"43", MassUnit::kg), variant);       // 42.5 kg, not exact: 42.5 below, 45 above
//
// Invariants: plates are heaviest first, that is from the inside out. `asked` is what was wanted; below and above are
// there only when it can't be made exactly.
#pragma once

#include "core/planning/loadable.h"

#include <memory>

namespace steelyard {

enum class LoadPicture {
    Bar,         // bar and plates, known
    BarUnknown,  // a bar, but the gym's plates or the bar's mass aren't known
    Dumbbells,
    Pin,
    Belt,      // hung on to the body
    BodyOnly,  // nothing hung on
    Counterweight,
};

struct SheetLoad {
    Load load;
    Load asked;
    bool exact = true;
    std::optional<Load> below;
    std::optional<Load> above;
    bool underEmptyBar = false;
    LoadPicture picture = LoadPicture::BarUnknown;
    std::vector<Load> plates;     // Bar: on each side; Belt: all of them; Pin: small ones on the stack
    std::optional<Load> pin;      // Pin: where it goes, in a stack of the gym
    std::optional<Load> bar;      // Bar: empty
    std::optional<Load> collars;  // Bar: both together, when they are part of the load
};

class SheetEquipment {
public:
    SheetEquipment(std::optional<Gym> gym, MassUnit unit);

    [[nodiscard]] const Gym* gym() const { return m_gym.get(); }
    [[nodiscard]] MassUnit unit() const { return m_unit; }
    [[nodiscard]] const LoadFinder& loads() const { return m_loads; }
    [[nodiscard]] SheetLoad setUp(const Load& asked, const Variant& variant) const;

private:
    void describe(SheetLoad& load, const Variant& variant) const;

    std::unique_ptr<const Gym> m_gym;  // where the finder's pointer stays good
    MassUnit m_unit;
    LoadFinder m_loads;
};

}  // namespace steelyard
