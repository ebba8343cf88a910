#include "core/exchange/starter_library.h"

#include "core/exchange/json_reading.h"
#include "core/exchange/starter_gyms.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>

#include <algorithm>
#include <functional>

namespace steelyard {
namespace {

constexpr int kStarterFormat = 1;

struct StarterLibraryText {
    Q_DECLARE_TR_FUNCTIONS(StarterLibraryText)
};

template <class Row>
Result<> refuseStarterDuplicate(const JsonPlace& place, const std::vector<Row>& rows, const QString Row::*field,
                                const QString& name)
{
    if (std::ranges::find(rows, name, field) == rows.end()) return {};
    return place.refuse(StarterLibraryText::tr("“%1” stands here twice; names are unique.").arg(name));
}

Result<> refuseStarterProblems(const JsonPlace& place, const Problems& problems)
{
    if (problems.empty()) return {};
    return place.refuse(problems.front().text);
}

// A log that names the parent only has to mean exactly one child.
template <class Row>
Result<> requireOneDefault(const JsonPlace& place, const std::vector<Row>& rows, const char* key)
{
    if (std::ranges::count(rows, true, &Row::isDefault) == 1) return {};
    return place.refuse(StarterLibraryText::tr("Exactly one of the “%1” is the default.").arg(QLatin1StringView(key)));
}

Result<std::vector<Muscle>> readMuscles(const QJsonArray& list)
{
    std::vector<Muscle> muscles;
    for (qsizetype i = 0; i < list.size(); ++i) {
        JsonPlace place = JsonPlace::of(list.at(i), StarterLibraryText::tr("muscle %1").arg(i + 1));
        Muscle muscle;
        muscle.key = place.shortText(QStringLiteral("key"));
        muscle.name = place.shortText(QStringLiteral("name"));
        STEELYARD_CHECK(place.finish());
        STEELYARD_CHECK(refuseStarterDuplicate(place, muscles, &Muscle::key, muscle.key));
        STEELYARD_CHECK(refuseStarterDuplicate(place, muscles, &Muscle::name, muscle.name));
        muscles.push_back(std::move(muscle));
    }
    return muscles;
}

Result<std::vector<Grip>> readGrips(const JsonPlace& file, const QJsonArray& list)
{
    std::vector<Grip> grips;
    for (qsizetype i = 0; i < list.size(); ++i) {
        JsonPlace place = JsonPlace::of(list.at(i), StarterLibraryText::tr("grip %1").arg(i + 1));
        Grip grip;
        grip.name = place.shortText(QStringLiteral("name"));
        if (!grip.name.isEmpty()) place.setPlace(StarterLibraryText::tr("grip “%1”").arg(grip.name));
        grip.orientation = place.optionalChoice<HandOrientation>(QStringLiteral("orientation"));
        grip.spacing = place.optionalChoice<HandSpacing>(QStringLiteral("spacing"));
        STEELYARD_CHECK(place.finish());
        STEELYARD_CHECK(refuseStarterProblems(place, validate(grip)));
        STEELYARD_CHECK(refuseStarterDuplicate(file, grips, &Grip::name, grip.name));
        grips.push_back(std::move(grip));
    }
    return grips;
}

Result<StarterStandard> readStarterStandard(const QJsonValue& value, const QString& variantPlace, qsizetype index)
{
    JsonPlace place =
        JsonPlace::of(value, StarterLibraryText::tr("%1, standard %2").arg(variantPlace, QString::number(index + 1)));
    StarterStandard standard;
    standard.name = place.shortText(QStringLiteral("name"));
    if (!standard.name.isEmpty())
        place.setPlace(StarterLibraryText::tr("%1, standard “%2”").arg(variantPlace, standard.name));
    standard.start = place.shortText(QStringLiteral("start"));
    standard.end = place.shortText(QStringLiteral("end"));
    standard.path = place.shortText(QStringLiteral("path"));
    standard.body = place.shortText(QStringLiteral("body"));
    standard.lowering = place.shortText(QStringLiteral("lowering"));
    standard.leastTravelPercent = place.optionalInteger(QStringLiteral("least_travel"));
    standard.isDefault = place.flag(QStringLiteral("default"));
    STEELYARD_CHECK(place.finish());
    STEELYARD_CHECK(refuseStarterProblems(place, validate(toStandard(standard, Id<Variant>(0)))));
    return standard;
}

Result<std::vector<StarterStandard>> readStandards(const JsonPlace& variant, const QJsonArray& list)
{
    std::vector<StarterStandard> standards;
    for (qsizetype i = 0; i < list.size(); ++i) {
        STEELYARD_TRY(StarterStandard standard, readStarterStandard(list.at(i), variant.place(), i));
        STEELYARD_CHECK(refuseStarterDuplicate(variant, standards, &StarterStandard::name, standard.name));
        standards.push_back(std::move(standard));
    }
    STEELYARD_CHECK(requireOneDefault(variant, standards, "standards"));
    return standards;
}

RepBand readBand(JsonPlace& variant)
{
    const QJsonArray ends = variant.neededArray(QStringLiteral("band"));
    const bool wholeEnds = ends.size() == 2 && ends.at(0).toInt() > 0 && ends.at(1).toInt() > 0;
    if (!wholeEnds)
        variant.fault(QStringLiteral("band"), StarterLibraryText::tr("two whole numbers are needed, low end first"));
    return RepBand{ends.at(0).toInt(), ends.at(1).toInt()};
}

void readVariantKinds(JsonPlace& place, StarterVariant& variant)
{
    variant.implement = place.choice(QStringLiteral("implement"), variant.implement);
    variant.loading = place.choice(QStringLiteral("loading"), variant.loading);
    variant.backLoading = place.choice(QStringLiteral("back_loading"), variant.backLoading);
    variant.sides = place.choice(QStringLiteral("sides"), variant.sides);
    variant.travel = place.choice(QStringLiteral("travel"), variant.travel);
}

Result<StarterVariant> readStarterVariant(const QJsonValue& value, const QString& exercisePlace, qsizetype index,
                                          const std::vector<Grip>& grips)
{
    JsonPlace place =
        JsonPlace::of(value, StarterLibraryText::tr("%1, variant %2").arg(exercisePlace, QString::number(index + 1)));
    StarterVariant variant;
    variant.name = place.shortText(QStringLiteral("name"));
    if (!variant.name.isEmpty())
        place.setPlace(StarterLibraryText::tr("%1, variant “%2”").arg(exercisePlace, variant.name));
    variant.position = place.shortText(QStringLiteral("position"));
    variant.path = place.shortText(QStringLiteral("path"));
    readVariantKinds(place, variant);
    variant.barMass = place.optionalLoad(QStringLiteral("bar_mass"));
    variant.step = place.optionalLoad(QStringLiteral("step"));
    variant.grip = place.shortText(QStringLiteral("grip"));
    variant.band = readBand(place);
    variant.isDefault = place.flag(QStringLiteral("default"));
    const QJsonArray standards = place.neededArray(QStringLiteral("standards"));
    STEELYARD_CHECK(place.finish());
    if (std::ranges::find(grips, variant.grip, &Grip::name) == grips.end())
        return place.refuse(StarterLibraryText::tr("The grip “%1” is not among the grips.").arg(variant.grip));
    STEELYARD_CHECK(refuseStarterProblems(place, validate(toVariant(variant, Id<Exercise>(0), std::nullopt))));
    STEELYARD_TRY(variant.standards, readStandards(place, standards));
    return variant;
}

Result<std::vector<std::pair<QString, double>>> readShares(const JsonPlace& exercise, const QJsonObject& object,
                                                           const std::vector<Muscle>& muscles)
{
    std::vector<std::pair<QString, double>> shares;
    for (auto entry = object.begin(); entry != object.end(); ++entry) {
        if (std::ranges::find(muscles, entry.key(), &Muscle::key) == muscles.end())
            return exercise.refuse(
                StarterLibraryText::tr("The muscle “%1” is not among the muscles.").arg(entry.key()));
        const double share = entry.value().toDouble();
        if (!(share > 0.0 && share <= 1.0))
            return exercise.refuse(
                StarterLibraryText::tr("The share of “%1” is a number above 0 and at most 1.").arg(entry.key()));
        shares.emplace_back(entry.key(), share);
    }
    std::ranges::stable_sort(shares, std::greater(), &std::pair<QString, double>::second);
    if (shares.empty() || shares.front().second < 1.0)
        return exercise.refuse(StarterLibraryText::tr("One muscle is the target: give it share 1."));
    return shares;
}

Result<StarterExercise> readExercise(const QJsonValue& value, qsizetype index, const StarterLibrary& library)
{
    JsonPlace place = JsonPlace::of(value, StarterLibraryText::tr("exercise %1").arg(index + 1));
    StarterExercise exercise;
    exercise.name = place.shortText(QStringLiteral("name"));
    if (!exercise.name.isEmpty()) place.setPlace(StarterLibraryText::tr("exercise “%1”").arg(exercise.name));
    const QJsonObject shares = place.object(QStringLiteral("shares"));
    const QJsonArray list = place.neededArray(QStringLiteral("variants"));
    STEELYARD_CHECK(place.finish());
    STEELYARD_TRY(exercise.shares, readShares(place, shares, library.muscles));
    for (qsizetype i = 0; i < list.size(); ++i) {
        STEELYARD_TRY(StarterVariant variant, readStarterVariant(list.at(i), place.place(), i, library.grips));
        STEELYARD_CHECK(refuseStarterDuplicate(place, exercise.variants, &StarterVariant::name, variant.name));
        exercise.variants.push_back(std::move(variant));
    }
    STEELYARD_CHECK(requireOneDefault(place, exercise.variants, "variants"));
    return exercise;
}

Result<QByteArray> readStarterFile(const QString& name)
{
    QFile file(QStringLiteral(":/steelyard/library/") + name);
    if (!file.open(QIODevice::ReadOnly))
        return fail(ErrorCode::NotFound,
                    StarterLibraryText::tr("The program was built without its starter data “%1”.").arg(name),
                    file.errorString());
    return file.readAll();
}

}  // namespace

Result<StarterLibrary> readStarterLibrary(const QByteArray& libraryJson, const QByteArray& gymsJson)
{
    STEELYARD_TRY(JsonPlace file, JsonPlace::document(libraryJson, StarterLibraryText::tr("library file")));
    const int format = file.integer(QStringLiteral("format"));
    const QJsonArray muscles = file.neededArray(QStringLiteral("muscles"));
    const QJsonArray grips = file.neededArray(QStringLiteral("grips"));
    const QJsonArray list = file.neededArray(QStringLiteral("exercises"));
    STEELYARD_CHECK(file.finish());
    if (format != kStarterFormat)
        return file.refuse(StarterLibraryText::tr("Format %1 is not known; %2 is.").arg(format).arg(kStarterFormat));
    StarterLibrary library;
    STEELYARD_TRY(library.muscles, readMuscles(muscles));
    STEELYARD_TRY(library.grips, readGrips(file, grips));
    for (qsizetype i = 0; i < list.size(); ++i) {
        STEELYARD_TRY(StarterExercise exercise, readExercise(list.at(i), i, library));
        STEELYARD_CHECK(refuseStarterDuplicate(file, library.exercises, &StarterExercise::name, exercise.name));
        library.exercises.push_back(std::move(exercise));
    }
    STEELYARD_TRY(library.gyms, readStarterGyms(gymsJson));
    return library;
}

Result<StarterLibrary> builtInStarterLibrary()
{
    STEELYARD_TRY(const QByteArray library, readStarterFile(QStringLiteral("starter.json")));
    STEELYARD_TRY(const QByteArray gyms, readStarterFile(QStringLiteral("gyms.json")));
    return readStarterLibrary(library, gyms);
}

Variant toVariant(const StarterVariant& from, Id<Exercise> exercise, std::optional<Id<Grip>> grip)
{
    return Variant{.exercise = exercise,
                   .name = from.name,
                   .implement = from.implement,
                   .position = from.position,
                   .path = from.path,
                   .loading = from.loading,
                   .barMass = from.barMass,
                   .step = from.step,
                   .backLoading = from.backLoading,
                   .sides = from.sides,
                   .travel = from.travel,
                   .band = from.band,
                   .usualGrip = grip,
                   .isDefault = from.isDefault,
                   .hidden = false};
}

RepStandard toStandard(const StarterStandard& from, Id<Variant> variant)
{
    return RepStandard{.variant = variant,
                       .athlete = std::nullopt,
                       .name = from.name,
                       .start = from.start,
                       .end = from.end,
                       .path = from.path,
                       .body = from.body,
                       .lowering = from.lowering,
                       .leastTravelPercent = from.leastTravelPercent,
                       .isDefault = from.isDefault};
}

}  // namespace steelyard
