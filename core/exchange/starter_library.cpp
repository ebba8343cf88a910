#include "core/exchange/starter_library.h"

#include "core/exchange/json_reading.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>
#include <QtCore/QJsonDocument>

#include <algorithm>

// Resources of a static library are pulled in by name, from outside any namespace.
static void initStarterLibraryResources()
{
    Q_INIT_RESOURCE(starter_library);
}

namespace steelyard {
namespace {

constexpr int kStarterFormat = 1;

struct StarterText {
    Q_DECLARE_TR_FUNCTIONS(StarterText)
};

Result<QJsonObject> starterDocument(const QByteArray& json, const QString& place)
{
    QJsonParseError parse;
    const QJsonDocument document = QJsonDocument::fromJson(json, &parse);
    if (!document.isObject())
        return fail(ErrorCode::Invalid,
                    StarterText::tr("%1 is no JSON object (%2, byte %3).")
                        .arg(place, parse.errorString(), QString::number(parse.offset)));
    if (document.object()[QStringLiteral("format")].toInt() != kStarterFormat)
        return fail(ErrorCode::Invalid, StarterText::tr("%1 has another format than %2.").arg(place).arg(kStarterFormat));
    return document.object();
}

template <class Item>
Result<void> refuseTwice(const std::vector<Item>& items, const QString& place)
{
    std::set<QString> names;
    for (const Item& item : items)
        if (!names.insert(item.name).second)
            return fail(ErrorCode::Invalid, StarterText::tr("%1: “%2” stands twice.").arg(place, item.name));
    return {};
}

template <class Item>
Result<void> needOneDefault(const std::vector<Item>& items, const QString& place)
{
    if (std::ranges::count_if(items, &Item::isDefault) != 1)
        return fail(ErrorCode::Invalid, StarterText::tr("%1 needs exactly one default.").arg(place));
    return {};
}

Result<StarterStandard> readStandard(const QJsonObject& json, const QString& parent)
{
    JsonPlace place(json, StarterText::tr("%1, standard “%2”").arg(parent, json[QStringLiteral("name")].toString()));
    StarterStandard standard;
    standard.name = place.text(QStringLiteral("name"));
    standard.start = place.text(QStringLiteral("start"));
    standard.end = place.text(QStringLiteral("end"));
    standard.path = place.text(QStringLiteral("path"));
    standard.body = place.text(QStringLiteral("body"));
    standard.lowering = place.text(QStringLiteral("lowering"));
    standard.leastTravelPercent = place.optionalInteger(QStringLiteral("least_travel"));
    standard.isDefault = place.flag(QStringLiteral("default"));
    STEELYARD_CHECK(place.finish());
    return standard;
}

Result<StarterVariant> readVariant(const QJsonObject& json, const StarterLibrary& library, const QString& parent)
{
    const QString where = StarterText::tr("%1, variant “%2”").arg(parent, json[QStringLiteral("name")].toString());
    JsonPlace place(json, where);
    StarterVariant v;
    v.name = place.text(QStringLiteral("name"));
    v.implement = place.choice(QStringLiteral("implement"), Implement::Other);
    v.position = place.text(QStringLiteral("position"));
    v.path = place.text(QStringLiteral("path"));
    v.loading = place.choice(QStringLiteral("loading"), Loading::BarTotal);
    v.barMass = place.optionalLoad(QStringLiteral("bar_mass"));
    v.step = place.optionalLoad(QStringLiteral("step"));
    v.backLoading = place.choice(QStringLiteral("back_loading"), BackLoading::None);
    v.sides = place.choice(QStringLiteral("sides"), Sides::Both);
    v.travel = place.choice(QStringLiteral("travel"), TravelKind::Straight);
    v.grip = place.text(QStringLiteral("grip"));
    v.isDefault = place.flag(QStringLiteral("default"));
    const QJsonArray band = place.array(QStringLiteral("band"));
    v.band = {band.at(0).toInt(), band.at(1).toInt()};
    if (band.size() != 2 || v.band.low < 1 || v.band.high < v.band.low)
        place.fault(QStringLiteral("band"), StarterText::tr("two whole numbers are needed, low end first"));
    if (std::ranges::find(library.grips, v.grip, &Grip::name) == library.grips.end())
        place.fault(QStringLiteral("grip"), StarterText::tr("“%1” is not among the grips").arg(v.grip));
    const QJsonArray standards = place.array(QStringLiteral("standards"));
    STEELYARD_CHECK(place.finish());
    for (const QJsonValue& standard : standards) {
        STEELYARD_TRY(auto read, readStandard(standard.toObject(), where));
        v.standards.push_back(std::move(read));
    }
    STEELYARD_CHECK(refuseTwice(v.standards, where));
    STEELYARD_CHECK(needOneDefault(v.standards, where));
    return v;
}

Result<StarterExercise> readExercise(const QJsonObject& json, const StarterLibrary& library)
{
    const QString where = StarterText::tr("exercise “%1”").arg(json[QStringLiteral("name")].toString());
    JsonPlace place(json, where);
    StarterExercise exercise;
    exercise.name = place.text(QStringLiteral("name"));
    const QJsonObject shares = place.object(QStringLiteral("shares"));
    for (auto it = shares.begin(); it != shares.end(); ++it) {
        const double share = it.value().toDouble();
        if (std::ranges::find(library.muscles, it.key(), &Muscle::key) == library.muscles.end())
            place.fault(QStringLiteral("shares"), StarterText::tr("“%1” is not among the muscles").arg(it.key()));
        if (!(share > 0 && share <= 1))
            place.fault(QStringLiteral("shares"), StarterText::tr("a share is more than 0 and at most 1"));
        exercise.shares.emplace_back(it.key(), share);
    }
    std::ranges::stable_sort(exercise.shares, std::ranges::greater{}, &std::pair<QString, double>::second);
    if (exercise.shares.empty() || exercise.shares.front().second != 1.0)
        place.fault(QStringLiteral("shares"), StarterText::tr("one muscle is the target, with share 1"));
    const QJsonArray variants = place.array(QStringLiteral("variants"));
    STEELYARD_CHECK(place.finish());
    for (const QJsonValue& variant : variants) {
        STEELYARD_TRY(auto read, readVariant(variant.toObject(), library, where));
        exercise.variants.push_back(std::move(read));
    }
    STEELYARD_CHECK(refuseTwice(exercise.variants, where));
    STEELYARD_CHECK(needOneDefault(exercise.variants, where));
    return exercise;
}

Result<std::vector<LoadRun>> readRuns(const QJsonArray& list, const QString& parent)
{
    std::vector<LoadRun> runs;
    for (const QJsonValue& item : list) {
        JsonPlace place(item.toObject(), parent);
        LoadRun run;
        run.name = place.text(QStringLiteral("name"));
        run.first = place.load(QStringLiteral("first"));
        run.step = place.load(QStringLiteral("step"));
        run.last = place.load(QStringLiteral("last"));
        STEELYARD_CHECK(place.finish());
        runs.push_back(run);
    }
    return runs;
}

Result<Gym> readGym(const QJsonObject& json)
{
    const QString where = StarterText::tr("gym “%1”").arg(json[QStringLiteral("name")].toString());
    JsonPlace place(json, where);
    Gym gym;
    gym.name = place.text(QStringLiteral("name"));
    gym.collarPair = place.optionalLoad(QStringLiteral("collar_pair"));
    const QJsonArray bars = place.array(QStringLiteral("bars"));
    const QJsonArray plates = place.array(QStringLiteral("plates"));
    STEELYARD_TRY(gym.dumbbells, readRuns(place.array(QStringLiteral("dumbbells")), where));
    STEELYARD_TRY(gym.stacks, readRuns(place.array(QStringLiteral("stacks")), where));
    STEELYARD_CHECK(place.finish());
    for (const QJsonValue& item : bars) {
        JsonPlace bar(item.toObject(), where);
        gym.bars.push_back({bar.text(QStringLiteral("name")), bar.choice(QStringLiteral("implement"), Implement::Other),
                            bar.load(QStringLiteral("mass"))});
        STEELYARD_CHECK(bar.finish());
    }
    for (const QJsonValue& item : plates) {
        JsonPlace plate(item.toObject(), where);
        gym.plates.push_back({plate.load(QStringLiteral("plate")), plate.integer(QStringLiteral("pairs"))});
        STEELYARD_CHECK(plate.finish());
    }
    if (const Problems problems = validate(gym); !problems.empty())
        return fail(ErrorCode::Invalid, where + QStringLiteral(": ") + problems.front().text);
    return gym;
}

Result<void> readMusclesAndGrips(JsonPlace& file, StarterLibrary& library)
{
    for (const QJsonValue& item : file.array(QStringLiteral("muscles"))) {
        JsonPlace place(item.toObject(), StarterText::tr("muscles"));
        library.muscles.push_back({place.text(QStringLiteral("key")), place.text(QStringLiteral("name"))});
        STEELYARD_CHECK(place.finish());
    }
    for (const QJsonValue& item : file.array(QStringLiteral("grips"))) {
        JsonPlace place(item.toObject(), StarterText::tr("grips"));
        Grip grip;
        grip.name = place.text(QStringLiteral("name"));
        grip.orientation = place.optionalChoice<HandOrientation>(QStringLiteral("orientation"));
        grip.spacing = place.optionalChoice<HandSpacing>(QStringLiteral("spacing"));
        STEELYARD_CHECK(place.finish());
        library.grips.push_back(std::move(grip));
    }
    STEELYARD_CHECK(refuseTwice(library.muscles, StarterText::tr("muscles")));
    return refuseTwice(library.grips, StarterText::tr("grips"));
}

QByteArray readBuiltIn(const QString& name)
{
    QFile file(QStringLiteral(":/steelyard/library/") + name);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

}  // namespace

Result<StarterLibrary> readStarterLibrary(const QByteArray& libraryJson, const QByteArray& gymsJson)
{
    StarterLibrary library;
    STEELYARD_TRY(const QJsonObject json, starterDocument(libraryJson, StarterText::tr("The library file")));
    JsonPlace file(json, StarterText::tr("The library file"));
    static_cast<void>(file.integer(QStringLiteral("format")));
    STEELYARD_CHECK(readMusclesAndGrips(file, library));
    const QJsonArray exercises = file.array(QStringLiteral("exercises"));
    STEELYARD_CHECK(file.finish());
    for (const QJsonValue& item : exercises) {
        STEELYARD_TRY(auto exercise, readExercise(item.toObject(), library));
        library.exercises.push_back(std::move(exercise));
    }
    STEELYARD_CHECK(refuseTwice(library.exercises, StarterText::tr("The library file")));

    STEELYARD_TRY(const QJsonObject gyms, starterDocument(gymsJson, StarterText::tr("The gym file")));
    JsonPlace gymFile(gyms, StarterText::tr("The gym file"));
    static_cast<void>(gymFile.integer(QStringLiteral("format")));
    for (const QJsonValue& item : gymFile.array(QStringLiteral("gyms"))) {
        STEELYARD_TRY(auto gym, readGym(item.toObject()));
        library.gyms.push_back(std::move(gym));
    }
    STEELYARD_CHECK(gymFile.finish());
    STEELYARD_CHECK(refuseTwice(library.gyms, StarterText::tr("The gym file")));
    return library;
}

Result<StarterLibrary> builtInStarterLibrary()
{
    initStarterLibraryResources();
    return readStarterLibrary(readBuiltIn(QStringLiteral("starter.json")), readBuiltIn(QStringLiteral("gyms.json")));
}

}  // namespace steelyard
