#include "core/domain/gym.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cstdlib>

namespace steelyard {
namespace {

struct GymText {
    Q_DECLARE_TR_FUNCTIONS(GymText)
};

void checkRun(const LoadRun& run, const QString& field, Problems& problems)
{
    if (run.step.mass() <= Mass() || run.last.mass() < run.first.mass() || run.first.unit() != run.step.unit()
        || run.first.unit() != run.last.unit())
        problems.push_back({field, GymText::tr("“%1” needs a step above zero, its last load not under its first, and "
                                               "one unit for all three.")
                                       .arg(run.name)});
    if (std::ranges::any_of(run.addOns, [](const Load& plate) { return plate.mass() <= Mass(); }))
        problems.push_back({field, GymText::tr("The add-on plates of “%1” have a mass above zero.").arg(run.name)});
}

}  // namespace

Problems validate(const Gym& gym)
{
    Problems problems;
    if (gym.name.isEmpty()) problems.push_back({QStringLiteral("name"), GymText::tr("A name is needed.")});
    for (const PlatePairs& plate : gym.plates)
        if (plate.pairs < 1 || plate.plate.mass() <= Mass())
            problems.push_back(
                {QStringLiteral("plates"), GymText::tr("A plate has a mass above zero and at least one pair.")});
    for (const LoadRun& run : gym.dumbbells) checkRun(run, QStringLiteral("dumbbells"), problems);
    for (const LoadRun& run : gym.stacks) checkRun(run, QStringLiteral("stacks"), problems);
    return problems;
}

std::optional<Load> barFor(const Gym* gym, const Variant& variant)
{
    if (!gym) return variant.barMass;
    const auto apart = [&](const GymBar& bar) {
        return variant.barMass ? std::abs(bar.mass.mass().steps() - variant.barMass->mass().steps()) : 0;
    };
    const GymBar* nearest = nullptr;
    for (const GymBar& bar : gym->bars)
        if (bar.implement == variant.implement && (!nearest || apart(bar) < apart(*nearest))) nearest = &bar;
    if (!nearest) return variant.barMass;
    const bool isBar = variant.implement == Implement::StraightBar || variant.implement == Implement::AngledBar;
    if (isBar || !variant.barMass) return nearest->mass;
    const auto reach =
        static_cast<std::int64_t>(kSameLeverShare * static_cast<double>(variant.barMass->mass().steps()));
    return apart(*nearest) <= reach ? std::optional(nearest->mass) : variant.barMass;
}

}  // namespace steelyard
