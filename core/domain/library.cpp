#include "core/domain/library.h"

#include "core/base/text.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct LibraryText {
    Q_DECLARE_TR_FUNCTIONS(LibraryText)
};

void checkName(const QString& name, Problems& problems)
{
    if (name.isEmpty())
        problems.push_back({QStringLiteral("name"), LibraryText::tr("A name is needed.")});
    else if (name.size() > kMaxNameLength)
        problems.push_back(
            {QStringLiteral("name"), LibraryText::tr("The name is longer than %n characters; shorten it.", nullptr,
                                                     static_cast<int>(kMaxNameLength))});
}

template <class Entity>
const Row<Entity>* findLibraryRow(const std::vector<Row<Entity>>& rows, Id<Entity> id)
{
    const auto found = std::ranges::find(rows, id, &Row<Entity>::id);
    return found == rows.end() ? nullptr : &*found;
}

}  // namespace

const Row<Muscle>* Library::find(Id<Muscle> id) const
{
    return findLibraryRow(muscles, id);
}

const Row<Exercise>* Library::find(Id<Exercise> id) const
{
    return findLibraryRow(exercises, id);
}

const Row<Variant>* Library::find(Id<Variant> id) const
{
    return findLibraryRow(variants, id);
}

const Row<Grip>* Library::find(Id<Grip> id) const
{
    return findLibraryRow(grips, id);
}

const Row<RepStandard>* Library::find(Id<RepStandard> id) const
{
    return findLibraryRow(standards, id);
}

QString Library::fullName(const Variant& variant) const
{
    const auto* exercise = find(variant.exercise);
    return exercise ? exercise->value.name + QStringLiteral(", ") + variant.name : variant.name;
}

QString asUsualName()
{
    return QStringLiteral("as usual");
}

Problems validate(const Exercise& exercise)
{
    Problems problems;
    checkName(exercise.name, problems);
    for (const MuscleShare& share : exercise.shares)
        if (!(share.share > 0.0 && share.share <= 1.0))
            problems.push_back(
                {QStringLiteral("shares"), LibraryText::tr("A muscle's share is more than 0 and at most 1.")});
    if (!exercise.shares.empty()
        && std::ranges::none_of(exercise.shares, [](const MuscleShare& s) { return s.share == 1.0; }))
        problems.push_back({QStringLiteral("shares"), LibraryText::tr("One muscle is the target: give it share 1.")});
    return problems;
}

Problems validate(const Variant& variant)
{
    Problems problems;
    checkName(variant.name, problems);
    if (variant.band.low < 1 || variant.band.high < variant.band.low || variant.band.high > 100)
        problems.push_back({QStringLiteral("band"),
                            LibraryText::tr("The rep band runs from at least 1 to at most 100, low end first.")});
    if (variant.barMass && variant.loading != Loading::BarTotal)
        problems.push_back(
            {QStringLiteral("bar_mass"), LibraryText::tr("Only a load on a bar, sled or lever has a bar mass.")});
    return problems;
}

Problems validate(const RepStandard& standard)
{
    Problems problems;
    checkName(standard.name, problems);
    if (standard.leastTravelPercent && (*standard.leastTravelPercent < 1 || *standard.leastTravelPercent > 100))
        problems.push_back({QStringLiteral("least_travel"),
                            LibraryText::tr("The smallest share of travel is from 1 to 100 percent.")});
    return problems;
}

Problems validate(const Grip& grip)
{
    Problems problems;
    checkName(grip.name, problems);
    if (grip.spacingBetweenHands
        && (toMillimetres(*grip.spacingBetweenHands) < 10 || toMillimetres(*grip.spacingBetweenHands) > 2200))
        problems.push_back({QStringLiteral("spacing"), LibraryText::tr("Hand spacing is from 1 to 220 centimetres.")});
    return problems;
}

}  // namespace steelyard
