#include "core/exchange/starter_library.h"

#include "core/exchange/starter_gyms.h"
#include "core/exchange/strict_object.h"

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
Result<> refuseStarterDuplicate(const StrictObject& object, const std::vector<Row>& rows, const QString Row::*field,
                                const QString& name)
{
    if (std::ranges::find(rows, name, field) == rows.end()) return {};
    return object.refuse(StarterLibraryText::tr("“%1” stands here twice; names are unique.").arg(name));
}

Result<> refuseProblems(const StrictObject& object, const Problems& problems)
{
    if (problems.empty()) return {};
    return object.refuse(problems.front().text);
}

// A log that names the parent only has to mean exactly one child.
template <class Row>
Result<> requireOneDefault(const StrictObject& object, const std::vector<Row>& rows, const char* key)
{
    if (std::ranges::count(rows, true, &Row::isDefault) == 1) return {};
    return object.refuse(StarterLibraryText::tr("Exactly one of the “%1” is the default.").arg(QLatin1StringView(key)));
}

Result<std::vector<Muscle>> readMuscles(const StrictObject& file)
{
    STEELYARD_TRY(const QJsonArray list, file.array("muscles"));
    std::vector<Muscle> muscles;
    for (qsizetype i = 0; i < list.size(); ++i) {
        STEELYARD_TRY(const StrictObject object,
                      StrictObject::read(list.at(i), StarterLibraryText::tr("muscle %1").arg(i + 1), {"key", "name"}));
        Muscle muscle;
        STEELYARD_TRY(muscle.key, object.text("key"));
        STEELYARD_TRY(muscle.name, object.text("name"));
        STEELYARD_CHECK(refuseStarterDuplicate(object, muscles, &Muscle::key, muscle.key));
        STEELYARD_CHECK(refuseStarterDuplicate(object, muscles, &Muscle::name, muscle.name));
        muscles.push_back(std::move(muscle));
    }
    return muscles;
}

Result<Grip> readGrip(const QJsonValue& value, qsizetype index)
{
    STEELYARD_TRY(StrictObject object, StrictObject::read(value, StarterLibraryText::tr("grip %1").arg(index + 1),
                                                          {"name", "orientation", "spacing"}));
    Grip grip;
    STEELYARD_TRY(grip.name, object.text("name"));
    object.setPlace(StarterLibraryText::tr("grip “%1”").arg(grip.name));
    if (object.has("orientation")) {
        STEELYARD_TRY(grip.orientation, object.choice<HandOrientation>("orientation"));
    }
    if (object.has("spacing")) {
        STEELYARD_TRY(grip.spacing, object.choice<HandSpacing>("spacing"));
    }
    STEELYARD_CHECK(refuseProblems(object, validate(grip)));
    return grip;
}

Result<std::vector<Grip>> readGrips(const StrictObject& file)
{
    STEELYARD_TRY(const QJsonArray list, file.array("grips"));
    std::vector<Grip> grips;
    for (qsizetype i = 0; i < list.size(); ++i) {
        STEELYARD_TRY(Grip grip, readGrip(list.at(i), i));
        STEELYARD_CHECK(refuseStarterDuplicate(file, grips, &Grip::name, grip.name));
        grips.push_back(std::move(grip));
    }
    return grips;
}

Result<StarterStandard> readStandard(const QJsonValue& value, const QString& variantPlace, qsizetype index)
{
    STEELYARD_TRY(StrictObject object,
                  StrictObject::read(
                      value, StarterLibraryText::tr("%1, standard %2").arg(variantPlace, QString::number(index + 1)),
                      {"name", "start", "end", "path", "body", "lowering", "least_travel", "default"}));
    StarterStandard standard;
    STEELYARD_TRY(standard.name, object.text("name"));
    object.setPlace(StarterLibraryText::tr("%1, standard “%2”").arg(variantPlace, standard.name));
    STEELYARD_TRY(standard.start, object.text("start"));
    STEELYARD_TRY(standard.end, object.text("end"));
    STEELYARD_TRY(standard.path, object.text("path"));
    STEELYARD_TRY(standard.body, object.text("body"));
    STEELYARD_TRY(standard.lowering, object.text("lowering"));
    STEELYARD_TRY(standard.leastTravelPercent, object.optionalWhole("least_travel"));
    STEELYARD_TRY(standard.isDefault, object.flag("default"));
    STEELYARD_CHECK(refuseProblems(object, validate(toStandard(standard, Id<Variant>(0)))));
    return standard;
}

Result<std::vector<StarterStandard>> readStandards(const StrictObject& variant)
{
    STEELYARD_TRY(const QJsonArray list, variant.array("standards"));
    std::vector<StarterStandard> standards;
    for (qsizetype i = 0; i < list.size(); ++i) {
        STEELYARD_TRY(StarterStandard standard, readStandard(list.at(i), variant.place(), i));
        STEELYARD_CHECK(refuseStarterDuplicate(variant, standards, &StarterStandard::name, standard.name));
        standards.push_back(std::move(standard));
    }
    STEELYARD_CHECK(requireOneDefault(variant, standards, "standards"));
    return standards;
}

Result<RepBand> readBand(const StrictObject& variant)
{
    STEELYARD_TRY(const QJsonArray ends, variant.array("band"));
    const bool wholeEnds = ends.size() == 2 && ends.at(0).toInt() > 0 && ends.at(1).toInt() > 0;
    if (!wholeEnds) return variant.refuse(StarterLibraryText::tr("“band” needs two whole numbers, low end first."));
    return RepBand{ends.at(0).toInt(), ends.at(1).toInt()};
}

Result<> readVariantKinds(const StrictObject& object, StarterVariant& variant)
{
    STEELYARD_TRY(variant.implement, object.choice<Implement>("implement"));
    STEELYARD_TRY(variant.loading, object.choice<Loading>("loading"));
    STEELYARD_TRY(variant.backLoading, object.choice<BackLoading>("back_loading"));
    STEELYARD_TRY(variant.sides, object.choice<Sides>("sides"));
    STEELYARD_TRY(variant.travel, object.choice<TravelKind>("travel"));
    return {};
}

Result<StarterVariant> readVariant(const QJsonValue& value, const QString& exercisePlace, qsizetype index,
                                   const std::vector<Grip>& grips)
{
    STEELYARD_TRY(StrictObject object,
                  StrictObject::read(
                      value, StarterLibraryText::tr("%1, variant %2").arg(exercisePlace, QString::number(index + 1)),
                      {"name", "implement", "position", "path", "loading", "bar_mass", "step", "back_loading", "sides",
                       "travel", "grip", "band", "default", "standards"}));
    StarterVariant variant;
    STEELYARD_TRY(variant.name, object.text("name"));
    object.setPlace(StarterLibraryText::tr("%1, variant “%2”").arg(exercisePlace, variant.name));
    STEELYARD_TRY(variant.position, object.text("position"));
    STEELYARD_TRY(variant.path, object.text("path"));
    STEELYARD_CHECK(readVariantKinds(object, variant));
    STEELYARD_TRY(variant.barMass, object.optionalLoad("bar_mass"));
    STEELYARD_TRY(variant.step, object.optionalLoad("step"));
    STEELYARD_TRY(variant.grip, object.text("grip"));
    if (std::ranges::find(grips, variant.grip, &Grip::name) == grips.end())
        return object.refuse(StarterLibraryText::tr("The grip “%1” is not among the grips.").arg(variant.grip));
    STEELYARD_TRY(variant.band, readBand(object));
    STEELYARD_TRY(variant.isDefault, object.flag("default"));
    STEELYARD_CHECK(refuseProblems(object, validate(toVariant(variant, Id<Exercise>(0), std::nullopt))));
    STEELYARD_TRY(variant.standards, readStandards(object));
    return variant;
}

Result<std::vector<std::pair<QString, double>>> readShares(const StrictObject& exercise,
                                                           const std::vector<Muscle>& muscles)
{
    STEELYARD_TRY(const QJsonObject object, exercise.object("shares"));
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
    STEELYARD_TRY(StrictObject object, StrictObject::read(value, StarterLibraryText::tr("exercise %1").arg(index + 1),
                                                          {"name", "shares", "variants"}));
    StarterExercise exercise;
    STEELYARD_TRY(exercise.name, object.text("name"));
    object.setPlace(StarterLibraryText::tr("exercise “%1”").arg(exercise.name));
    STEELYARD_TRY(exercise.shares, readShares(object, library.muscles));
    STEELYARD_TRY(const QJsonArray list, object.array("variants"));
    for (qsizetype i = 0; i < list.size(); ++i) {
        STEELYARD_TRY(StarterVariant variant, readVariant(list.at(i), object.place(), i, library.grips));
        STEELYARD_CHECK(refuseStarterDuplicate(object, exercise.variants, &StarterVariant::name, variant.name));
        exercise.variants.push_back(std::move(variant));
    }
    STEELYARD_CHECK(requireOneDefault(object, exercise.variants, "variants"));
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
    STEELYARD_TRY(const StrictObject file,
                  StrictObject::readDocument(libraryJson, StarterLibraryText::tr("library file"),
                                             {"format", "muscles", "grips", "exercises"}));
    STEELYARD_TRY(const int format, file.whole("format"));
    if (format != kStarterFormat)
        return file.refuse(StarterLibraryText::tr("Format %1 is not known; %2 is.").arg(format).arg(kStarterFormat));
    StarterLibrary library;
    STEELYARD_TRY(library.muscles, readMuscles(file));
    STEELYARD_TRY(library.grips, readGrips(file));
    STEELYARD_TRY(const QJsonArray list, file.array("exercises"));
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
