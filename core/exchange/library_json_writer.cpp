#include "core/exchange/library_json.h"

#include <QtCore/QJsonArray>

namespace steelyard {
namespace {

QJsonObject shareJson(const std::vector<MuscleShare>& shares, const Library& library)
{
    QJsonObject json;
    for (const MuscleShare& share : shares)
        if (const auto* muscle = library.find(share.muscle)) json[muscle->value.key] = share.share;
    return json;
}

QJsonObject gripJson(const Row<Grip>& row)
{
    const Grip& grip = row.value;
    QJsonObject json{{QStringLiteral("uuid"), uuidText(row.uuid)}, {QStringLiteral("name"), grip.name}};
    if (grip.orientation) json[QStringLiteral("orientation")] = toText(*grip.orientation);
    if (grip.spacing) json[QStringLiteral("spacing")] = toText(*grip.spacing);
    if (grip.spacingBetweenHands)
        json[QStringLiteral("spacing_mm")] = static_cast<qint64>(toMillimetres(*grip.spacingBetweenHands));
    return json;
}

QJsonObject exerciseJson(const Row<Exercise>& row, const Library& library)
{
    QJsonObject json{{QStringLiteral("uuid"), uuidText(row.uuid)},
                     {QStringLiteral("name"), row.value.name},
                     {QStringLiteral("shares"), shareJson(row.value.shares, library)}};
    if (row.value.hidden) json[QStringLiteral("hidden")] = true;
    return json;
}

QJsonObject variantJson(const Row<Variant>& row, const Library& library)
{
    const Variant& v = row.value;
    QJsonObject json{{QStringLiteral("uuid"), uuidText(row.uuid)},
                     {QStringLiteral("name"), v.name},
                     {QStringLiteral("implement"), toText(v.implement)},
                     {QStringLiteral("position"), v.position},
                     {QStringLiteral("path"), v.path},
                     {QStringLiteral("loading"), toText(v.loading)},
                     {QStringLiteral("back_loading"), toText(v.backLoading)},
                     {QStringLiteral("sides"), toText(v.sides)},
                     {QStringLiteral("travel"), toText(v.travel)},
                     {QStringLiteral("band_low"), v.band.low},
                     {QStringLiteral("band_high"), v.band.high}};
    if (const auto* exercise = library.find(v.exercise)) json[QStringLiteral("exercise")] = uuidText(exercise->uuid);
    if (v.barMass) json[QStringLiteral("bar_mass")] = v.barMass->toString();
    if (v.step) json[QStringLiteral("step")] = v.step->toString();
    if (v.usualGrip)
        if (const auto* grip = library.find(*v.usualGrip)) json[QStringLiteral("grip")] = uuidText(grip->uuid);
    if (v.isDefault) json[QStringLiteral("default")] = true;
    if (v.hidden) json[QStringLiteral("hidden")] = true;
    return json;
}

QJsonArray runsJson(const std::vector<LoadRun>& runs)
{
    QJsonArray list;
    for (const LoadRun& run : runs) {
        QJsonObject json{{QStringLiteral("name"), run.name},
                         {QStringLiteral("first"), run.first.toString()},
                         {QStringLiteral("step"), run.step.toString()},
                         {QStringLiteral("last"), run.last.toString()}};
        QJsonArray addOns;
        for (const Load& plate : run.addOns) addOns.append(plate.toString());
        if (!addOns.isEmpty()) json[QStringLiteral("add_ons")] = addOns;
        list.append(json);
    }
    return list;
}

}  // namespace

QString uuidText(const QUuid& uuid)
{
    return uuid.toString(QUuid::WithoutBraces);
}

QJsonObject libraryToJson(const Library& library)
{
    QJsonArray muscles;
    for (const auto& row : library.muscles)
        muscles.append(QJsonObject{{QStringLiteral("key"), row.value.key}, {QStringLiteral("name"), row.value.name}});
    QJsonArray grips;
    for (const auto& row : library.grips) grips.append(gripJson(row));
    QJsonArray exercises;
    for (const auto& row : library.exercises) exercises.append(exerciseJson(row, library));
    QJsonArray variants;
    for (const auto& row : library.variants) variants.append(variantJson(row, library));
    QJsonArray standards;
    for (const auto& row : library.standards)
        if (!row.value.athlete) standards.append(toJson(row, library));
    return {{QStringLiteral("muscles"), muscles},
            {QStringLiteral("grips"), grips},
            {QStringLiteral("exercises"), exercises},
            {QStringLiteral("variants"), variants},
            {QStringLiteral("standards"), standards}};
}

QJsonObject toJson(const Row<RepStandard>& row, const Library& library)
{
    const RepStandard& s = row.value;
    QJsonObject json{{QStringLiteral("uuid"), uuidText(row.uuid)},
                     {QStringLiteral("name"), s.name},
                     {QStringLiteral("start"), s.start},
                     {QStringLiteral("end"), s.end},
                     {QStringLiteral("path"), s.path},
                     {QStringLiteral("body"), s.body},
                     {QStringLiteral("lowering"), s.lowering}};
    if (const auto* variant = library.find(s.variant)) json[QStringLiteral("variant")] = uuidText(variant->uuid);
    if (s.leastTravelPercent) json[QStringLiteral("least_travel")] = *s.leastTravelPercent;
    if (s.isDefault) json[QStringLiteral("default")] = true;
    return json;
}

QJsonObject toJson(const Row<Gym>& row)
{
    const Gym& gym = row.value;
    QJsonArray bars;
    for (const GymBar& bar : gym.bars)
        bars.append(QJsonObject{{QStringLiteral("name"), bar.name},
                                {QStringLiteral("implement"), toText(bar.implement)},
                                {QStringLiteral("mass"), bar.mass.toString()}});
    QJsonArray plates;
    for (const PlatePairs& plate : gym.plates)
        plates.append(
            QJsonObject{{QStringLiteral("plate"), plate.plate.toString()}, {QStringLiteral("pairs"), plate.pairs}});
    QJsonObject json{{QStringLiteral("uuid"), uuidText(row.uuid)},
                     {QStringLiteral("name"), gym.name},
                     {QStringLiteral("bars"), bars},
                     {QStringLiteral("plates"), plates},
                     {QStringLiteral("dumbbells"), runsJson(gym.dumbbells)},
                     {QStringLiteral("stacks"), runsJson(gym.stacks)}};
    if (gym.collarPair) json[QStringLiteral("collar_pair")] = gym.collarPair->toString();
    return json;
}

}  // namespace steelyard
