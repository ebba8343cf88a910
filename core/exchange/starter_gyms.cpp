#include "core/exchange/starter_gyms.h"

#include "core/exchange/json_reading.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <functional>

namespace steelyard {
namespace {

struct StarterGymsText {
    Q_DECLARE_TR_FUNCTIONS(StarterGymsText)
};

QString gymRowPlace(const QString& gymPlace, const char* kind, qsizetype index)
{
    return StarterGymsText::tr("%1, %2 %3", "gym, kind of row, number of row")
        .arg(gymPlace, QLatin1StringView(kind), QString::number(index + 1));
}

// Two rows of one name, or two rows for one plate, would leave open which of them is meant.
template <class Row, class Projection>
Result<> refuseGymDuplicate(const JsonPlace& place, const std::vector<Row>& rows, const Row& row, Projection projection)
{
    if (std::ranges::find(rows, std::invoke(projection, row), projection) == rows.end()) return {};
    return place.refuse(StarterGymsText::tr("This row stands in the list twice; keep one."));
}

Result<std::vector<GymBar>> readGymBars(const QJsonArray& list, const QString& gymPlace)
{
    std::vector<GymBar> bars;
    for (qsizetype i = 0; i < list.size(); ++i) {
        JsonPlace place = JsonPlace::of(list.at(i), gymRowPlace(gymPlace, "bar", i));
        GymBar bar;
        bar.name = place.shortText(QStringLiteral("name"));
        bar.implement = place.choice(QStringLiteral("implement"), Implement::Other);
        bar.mass = place.load(QStringLiteral("mass"));
        STEELYARD_CHECK(place.finish());
        STEELYARD_CHECK(refuseGymDuplicate(place, bars, bar, &GymBar::name));
        bars.push_back(std::move(bar));
    }
    return bars;
}

Result<std::vector<PlatePairs>> readGymPlates(const QJsonArray& list, const QString& gymPlace)
{
    std::vector<PlatePairs> plates;
    for (qsizetype i = 0; i < list.size(); ++i) {
        JsonPlace place = JsonPlace::of(list.at(i), gymRowPlace(gymPlace, "plate", i));
        PlatePairs plate;
        plate.plate = place.load(QStringLiteral("plate"));
        plate.pairs = place.integer(QStringLiteral("pairs"));
        STEELYARD_CHECK(place.finish());
        STEELYARD_CHECK(refuseGymDuplicate(place, plates, plate, &PlatePairs::plate));
        plates.push_back(plate);
    }
    return plates;
}

Result<std::vector<LoadRun>> readGymRuns(const QJsonArray& list, const QString& gymPlace, const char* kind)
{
    std::vector<LoadRun> runs;
    for (qsizetype i = 0; i < list.size(); ++i) {
        JsonPlace place = JsonPlace::of(list.at(i), gymRowPlace(gymPlace, kind, i));
        LoadRun run;
        run.name = place.shortText(QStringLiteral("name"));
        run.first = place.load(QStringLiteral("first"));
        run.step = place.load(QStringLiteral("step"));
        run.last = place.load(QStringLiteral("last"));
        STEELYARD_CHECK(place.finish());
        STEELYARD_CHECK(refuseGymDuplicate(place, runs, run, &LoadRun::name));
        runs.push_back(std::move(run));
    }
    return runs;
}

Result<Gym> readGym(const QJsonValue& value, qsizetype index)
{
    JsonPlace place = JsonPlace::of(value, StarterGymsText::tr("gym %1").arg(index + 1));
    Gym gym;
    gym.name = place.shortText(QStringLiteral("name"));
    if (!gym.name.isEmpty()) place.setPlace(StarterGymsText::tr("gym “%1”").arg(gym.name));
    gym.collarPair = place.optionalLoad(QStringLiteral("collar_pair"));
    const QJsonArray bars = place.neededArray(QStringLiteral("bars"));
    const QJsonArray plates = place.neededArray(QStringLiteral("plates"));
    const QJsonArray dumbbells = place.neededArray(QStringLiteral("dumbbells"));
    const QJsonArray stacks = place.neededArray(QStringLiteral("stacks"));
    STEELYARD_CHECK(place.finish());
    STEELYARD_TRY(gym.bars, readGymBars(bars, place.place()));
    STEELYARD_TRY(gym.plates, readGymPlates(plates, place.place()));
    STEELYARD_TRY(gym.dumbbells, readGymRuns(dumbbells, place.place(), "dumbbells"));
    STEELYARD_TRY(gym.stacks, readGymRuns(stacks, place.place(), "stacks"));
    if (const Problems problems = validate(gym); !problems.empty()) return place.refuse(problems.front().text);
    return gym;
}

}  // namespace

Result<std::vector<Gym>> readStarterGyms(const QByteArray& json)
{
    STEELYARD_TRY(JsonPlace file, JsonPlace::document(json, StarterGymsText::tr("gyms file")));
    const int format = file.integer(QStringLiteral("format"));
    const QJsonArray list = file.neededArray(QStringLiteral("gyms"));
    STEELYARD_CHECK(file.finish());
    if (format != 1) return file.refuse(StarterGymsText::tr("Format %1 is not known; 1 is.").arg(format));
    std::vector<Gym> gyms;
    for (qsizetype i = 0; i < list.size(); ++i) {
        STEELYARD_TRY(Gym gym, readGym(list.at(i), i));
        if (std::ranges::find(gyms, gym.name, &Gym::name) != gyms.end())
            return file.refuse(StarterGymsText::tr("The gym “%1” stands here twice.").arg(gym.name));
        gyms.push_back(std::move(gym));
    }
    return gyms;
}

}  // namespace steelyard
