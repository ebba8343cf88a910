#include "core/exchange/starter_gyms.h"

#include "core/exchange/strict_object.h"

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
Result<> refuseGymDuplicate(const StrictObject& object, const std::vector<Row>& rows, const Row& row,
                            Projection projection)
{
    if (std::ranges::find(rows, std::invoke(projection, row), projection) == rows.end()) return {};
    return object.refuse(StarterGymsText::tr("This row stands in the list twice; keep one."));
}

Result<std::vector<GymBar>> readGymBars(const StrictObject& gym)
{
    STEELYARD_TRY(const QJsonArray list, gym.array("bars"));
    std::vector<GymBar> bars;
    for (qsizetype i = 0; i < list.size(); ++i) {
        STEELYARD_TRY(const StrictObject object, StrictObject::read(list.at(i), gymRowPlace(gym.place(), "bar", i),
                                                                    {"name", "implement", "mass"}));
        GymBar bar;
        STEELYARD_TRY(bar.name, object.text("name"));
        STEELYARD_TRY(bar.implement, object.choice<Implement>("implement"));
        STEELYARD_TRY(bar.mass, object.load("mass"));
        STEELYARD_CHECK(refuseGymDuplicate(object, bars, bar, &GymBar::name));
        bars.push_back(std::move(bar));
    }
    return bars;
}

Result<std::vector<PlatePairs>> readGymPlates(const StrictObject& gym)
{
    STEELYARD_TRY(const QJsonArray list, gym.array("plates"));
    std::vector<PlatePairs> plates;
    for (qsizetype i = 0; i < list.size(); ++i) {
        STEELYARD_TRY(const StrictObject object,
                      StrictObject::read(list.at(i), gymRowPlace(gym.place(), "plate", i), {"plate", "pairs"}));
        PlatePairs plate;
        STEELYARD_TRY(plate.plate, object.load("plate"));
        STEELYARD_TRY(plate.pairs, object.whole("pairs"));
        STEELYARD_CHECK(refuseGymDuplicate(object, plates, plate, &PlatePairs::plate));
        plates.push_back(plate);
    }
    return plates;
}

Result<std::vector<LoadRun>> readGymRuns(const StrictObject& gym, const char* key)
{
    STEELYARD_TRY(const QJsonArray list, gym.array(key));
    std::vector<LoadRun> runs;
    for (qsizetype i = 0; i < list.size(); ++i) {
        STEELYARD_TRY(const StrictObject object, StrictObject::read(list.at(i), gymRowPlace(gym.place(), key, i),
                                                                    {"name", "first", "step", "last"}));
        LoadRun run;
        STEELYARD_TRY(run.name, object.text("name"));
        STEELYARD_TRY(run.first, object.load("first"));
        STEELYARD_TRY(run.step, object.load("step"));
        STEELYARD_TRY(run.last, object.load("last"));
        STEELYARD_CHECK(refuseGymDuplicate(object, runs, run, &LoadRun::name));
        runs.push_back(std::move(run));
    }
    return runs;
}

Result<Gym> readGym(const QJsonValue& value, qsizetype index)
{
    STEELYARD_TRY(StrictObject object,
                  StrictObject::read(value, StarterGymsText::tr("gym %1").arg(index + 1),
                                     {"name", "bars", "collar_pair", "plates", "dumbbells", "stacks"}));
    Gym gym;
    STEELYARD_TRY(gym.name, object.text("name"));
    object.setPlace(StarterGymsText::tr("gym “%1”").arg(gym.name));
    STEELYARD_TRY(gym.bars, readGymBars(object));
    STEELYARD_TRY(gym.collarPair, object.optionalLoad("collar_pair"));
    STEELYARD_TRY(gym.plates, readGymPlates(object));
    STEELYARD_TRY(gym.dumbbells, readGymRuns(object, "dumbbells"));
    STEELYARD_TRY(gym.stacks, readGymRuns(object, "stacks"));
    if (const Problems problems = validate(gym); !problems.empty()) return object.refuse(problems.front().text);
    return gym;
}

}  // namespace

Result<std::vector<Gym>> readStarterGyms(const QByteArray& json)
{
    STEELYARD_TRY(const StrictObject object,
                  StrictObject::readDocument(json, StarterGymsText::tr("gyms file"), {"format", "gyms"}));
    STEELYARD_TRY(const int format, object.whole("format"));
    if (format != 1) return object.refuse(StarterGymsText::tr("Format %1 is not known; 1 is.").arg(format));
    STEELYARD_TRY(const QJsonArray list, object.array("gyms"));
    std::vector<Gym> gyms;
    for (qsizetype i = 0; i < list.size(); ++i) {
        STEELYARD_TRY(Gym gym, readGym(list.at(i), i));
        if (std::ranges::find(gyms, gym.name, &Gym::name) != gyms.end())
            return object.refuse(StarterGymsText::tr("The gym “%1” stands here twice.").arg(gym.name));
        gyms.push_back(std::move(gym));
    }
    return gyms;
}

}  // namespace steelyard
