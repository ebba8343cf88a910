#include "core/exchange/library_json.h"

#include "core/exchange/json_names.h"
#include "core/storage/gym_repository.h"
#include "core/storage/library_repository.h"

#include <QtCore/QCoreApplication>

#include <set>

namespace steelyard {
namespace {

struct LibraryJsonText {
    Q_DECLARE_TR_FUNCTIONS(LibraryJsonText)
};

QString named(const QString& kind, const QJsonObject& json)
{
    return kind.arg(json[QStringLiteral("name")].toString());
}

Result<void> muscleFromJson(Transaction& transaction, const QJsonObject& json, JsonNames& names)
{
    JsonPlace place(json, named(LibraryJsonText::tr("book.json, muscle “%1”"), json));
    const Muscle muscle{place.text(QStringLiteral("key")), place.text(QStringLiteral("name"))};
    if (muscle.key.isEmpty() || names.muscles.contains(muscle.key))
        place.fault(QStringLiteral("key"), LibraryJsonText::tr("a key of its own is needed"));
    STEELYARD_CHECK(place.finish());
    STEELYARD_TRY(const auto id, LibraryRepository(transaction.database()).insert(transaction, muscle));
    names.muscles.emplace(muscle.key, id);
    return {};
}

Result<void> gripFromJson(Transaction& transaction, const QJsonObject& json, JsonNames& names)
{
    const QString where = named(LibraryJsonText::tr("book.json, grip “%1”"), json);
    JsonPlace place(json, where);
    const QUuid uuid = readNewUuid(place, names.grips);
    Grip grip;
    grip.name = place.text(QStringLiteral("name"));
    grip.orientation = place.optionalChoice<HandOrientation>(QStringLiteral("orientation"));
    grip.spacing = place.optionalChoice<HandSpacing>(QStringLiteral("spacing"));
    grip.spacingBetweenHands = readOptionalLength(place, QStringLiteral("spacing_mm"));
    STEELYARD_CHECK(place.finish());
    STEELYARD_CHECK(refuseProblems(validate(grip), where));
    STEELYARD_TRY(const auto id, LibraryRepository(transaction.database()).insert(transaction, grip, uuid));
    names.grips.emplace(uuid, id);
    return {};
}

Result<void> exerciseFromJson(Transaction& transaction, const QJsonObject& json, JsonNames& names)
{
    const QString where = named(LibraryJsonText::tr("book.json, exercise “%1”"), json);
    JsonPlace place(json, where);
    const QUuid uuid = readNewUuid(place, names.exercises);
    Exercise exercise;
    exercise.name = place.text(QStringLiteral("name"));
    exercise.hidden = place.flag(QStringLiteral("hidden"));
    const QJsonObject shares = place.object(QStringLiteral("shares"));
    for (auto it = shares.begin(); it != shares.end(); ++it) {
        const auto muscle = names.muscles.find(it.key());
        if (muscle == names.muscles.end())
            place.fault(QStringLiteral("shares"), LibraryJsonText::tr("“%1” is not among the muscles").arg(it.key()));
        else
            exercise.shares.push_back({muscle->second, it.value().toDouble()});
    }
    STEELYARD_CHECK(place.finish());
    STEELYARD_CHECK(refuseProblems(validate(exercise), where));
    STEELYARD_TRY(const auto id, LibraryRepository(transaction.database()).insert(transaction, exercise, uuid));
    names.exercises.emplace(uuid, id);
    return {};
}

Result<void> variantFromJson(Transaction& transaction, const QJsonObject& json, JsonNames& names)
{
    const QString where = named(LibraryJsonText::tr("book.json, variant “%1”"), json);
    JsonPlace place(json, where);
    const QUuid uuid = readNewUuid(place, names.variants);
    const auto exercise = readName(place, QStringLiteral("exercise"), names.exercises);
    if (!exercise) return place.finish();
    Variant v{.exercise = *exercise};
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
    v.band = {place.integer(QStringLiteral("band_low")), place.integer(QStringLiteral("band_high"))};
    if (place.has(QStringLiteral("grip"))) v.usualGrip = readName(place, QStringLiteral("grip"), names.grips);
    v.isDefault = place.flag(QStringLiteral("default"));
    v.hidden = place.flag(QStringLiteral("hidden"));
    STEELYARD_CHECK(place.finish());
    STEELYARD_CHECK(refuseProblems(validate(v), where));
    STEELYARD_TRY(const auto id, LibraryRepository(transaction.database()).insert(transaction, v, uuid));
    names.variants.emplace(uuid, id);
    return {};
}

Result<std::vector<LoadRun>> runsFromJson(const QJsonArray& list, const QString& where)
{
    std::vector<LoadRun> runs;
    for (const auto& item : list) {
        JsonPlace place(item.toObject(), where);
        LoadRun run;
        run.name = place.text(QStringLiteral("name"));
        run.first = place.load(QStringLiteral("first"));
        run.step = place.load(QStringLiteral("step"));
        run.last = place.load(QStringLiteral("last"));
        for (const auto& plate : place.array(QStringLiteral("add_ons"))) {
            const auto load = Load::parseWithUnit(plate.toString());
            if (!load) place.fault(QStringLiteral("add_ons"), LibraryJsonText::tr("a plate is a text like “1.25 kg”"));
            run.addOns.push_back(load.value_or(Load{}));
        }
        STEELYARD_CHECK(place.finish());
        runs.push_back(std::move(run));
    }
    return runs;
}

}  // namespace

Result<void> libraryFromJson(Transaction& transaction, const QJsonObject& json, JsonNames& names)
{
    JsonPlace place(json, LibraryJsonText::tr("book.json, library"));
    const QJsonArray muscles = place.array(QStringLiteral("muscles"));
    const QJsonArray grips = place.array(QStringLiteral("grips"));
    const QJsonArray exercises = place.array(QStringLiteral("exercises"));
    const QJsonArray variants = place.array(QStringLiteral("variants"));
    const QJsonArray standards = place.array(QStringLiteral("standards"));
    STEELYARD_CHECK(place.finish());
    for (const auto& item : muscles) STEELYARD_CHECK(muscleFromJson(transaction, item.toObject(), names));
    for (const auto& item : grips) STEELYARD_CHECK(gripFromJson(transaction, item.toObject(), names));
    for (const auto& item : exercises) STEELYARD_CHECK(exerciseFromJson(transaction, item.toObject(), names));
    for (const auto& item : variants) STEELYARD_CHECK(variantFromJson(transaction, item.toObject(), names));
    for (const auto& item : standards)
        STEELYARD_CHECK(
            standardFromJson(transaction, item.toObject(), std::nullopt, names, LibraryJsonText::tr("book.json")));
    return {};
}

Result<void> standardFromJson(Transaction& transaction, const QJsonObject& json, std::optional<Id<Athlete>> athlete,
                              JsonNames& names, const QString& parent)
{
    const QString where = named(parent + LibraryJsonText::tr(", rep standard “%1”"), json);
    JsonPlace place(json, where);
    const QUuid uuid = readNewUuid(place, names.standards);
    const auto variant = readName(place, QStringLiteral("variant"), names.variants);
    if (!variant) return place.finish();
    RepStandard s{.variant = *variant};
    s.athlete = athlete;
    s.name = place.text(QStringLiteral("name"));
    s.start = place.text(QStringLiteral("start"));
    s.end = place.text(QStringLiteral("end"));
    s.path = place.text(QStringLiteral("path"));
    s.body = place.text(QStringLiteral("body"));
    s.lowering = place.text(QStringLiteral("lowering"));
    s.leastTravelPercent = place.optionalInteger(QStringLiteral("least_travel"));
    s.isDefault = place.flag(QStringLiteral("default"));
    STEELYARD_CHECK(place.finish());
    STEELYARD_CHECK(refuseProblems(validate(s), where));
    STEELYARD_TRY(const auto id, LibraryRepository(transaction.database()).insert(transaction, s, uuid));
    names.standards.emplace(uuid, id);
    return {};
}

Result<void> gymFromJson(Transaction& transaction, const QJsonObject& json, JsonNames& names)
{
    const QString where = named(LibraryJsonText::tr("book.json, gym “%1”"), json);
    JsonPlace place(json, where);
    const QUuid uuid = readNewUuid(place, names.gyms);
    Gym gym;
    gym.name = place.text(QStringLiteral("name"));
    gym.collarPair = place.optionalLoad(QStringLiteral("collar_pair"));
    const QJsonArray bars = place.array(QStringLiteral("bars"));
    const QJsonArray plates = place.array(QStringLiteral("plates"));
    STEELYARD_TRY(gym.dumbbells, runsFromJson(place.array(QStringLiteral("dumbbells")), where));
    STEELYARD_TRY(gym.stacks, runsFromJson(place.array(QStringLiteral("stacks")), where));
    STEELYARD_CHECK(place.finish());
    for (const auto& item : bars) {
        JsonPlace bar(item.toObject(), where);
        gym.bars.push_back({bar.text(QStringLiteral("name")), bar.choice(QStringLiteral("implement"), Implement::Other),
                            bar.load(QStringLiteral("mass"))});
        STEELYARD_CHECK(bar.finish());
    }
    for (const auto& item : plates) {
        JsonPlace plate(item.toObject(), where);
        gym.plates.push_back({plate.load(QStringLiteral("plate")), plate.integer(QStringLiteral("pairs"))});
        STEELYARD_CHECK(plate.finish());
    }
    STEELYARD_CHECK(refuseProblems(validate(gym), where));
    STEELYARD_TRY(const auto id, GymRepository(transaction.database()).insert(transaction, gym, uuid));
    names.gyms.emplace(uuid, id);
    return {};
}

}  // namespace steelyard
