#include "core/sheets/sheet_load.h"

#include <algorithm>

namespace steelyard {

SheetEquipment::SheetEquipment(std::optional<Gym> gym, MassUnit unit)
    : m_gym(gym ? std::make_unique<const Gym>(*std::move(gym)) : nullptr), m_unit(unit), m_loads(m_gym.get(), unit)
{}

void SheetEquipment::describe(SheetLoad& load, const Variant& variant) const
{
    switch (variant.loading) {
    case Loading::BarTotal: {
        load.bar = barFor(m_gym.get(), variant);
        if (!load.bar || !m_gym || m_gym->plates.empty()) return;
        load.picture = LoadPicture::Bar;
        const bool sleeves = variant.implement == Implement::StraightBar || variant.implement == Implement::AngledBar;
        if (sleeves && m_gym->collarPair && m_gym->collarPair->mass() > Mass()) load.collars = m_gym->collarPair;
        return;
    }
    case Loading::PerHand:
        load.picture = LoadPicture::Dumbbells;
        return;
    case Loading::Stack:
        load.picture = LoadPicture::Pin;
        return;
    case Loading::Added:
        load.picture = load.load.mass() > Mass() ? LoadPicture::Belt : LoadPicture::BodyOnly;
        return;
    case Loading::Assisted:
        load.picture = LoadPicture::Counterweight;
        return;
    }
}

SheetLoad SheetEquipment::setUp(const Load& asked, const Variant& variant) const
{
    const LoadChoice choice = m_loads.nearest(asked.mass(), variant);
    SheetLoad load;
    load.asked = asked;
    load.exact = choice.exact;
    // What was typed is kept where it is the same load: 95 lb stays 95 lb.
    load.load = choice.exact ? asked : choice.load;
    load.below = choice.below;
    load.above = choice.above;
    load.underEmptyBar = choice.underEmptyBar;
    load.plates = choice.plates;
    load.pin = choice.pin;
    describe(load, variant);
    return load;
}

}  // namespace steelyard
