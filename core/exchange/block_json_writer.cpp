#include "core/exchange/block_json.h"

#include "core/exchange/json_writing.h"

#include <QtCore/QJsonArray>

namespace steelyard {
namespace {

QJsonObject slotJson(const Slot& slot, const Library& library)
{
    QJsonObject json = liftToJson(slot.variant, slot.grip, slot.standard, library);
    json[QStringLiteral("sets")] = slot.sets;
    json[QStringLiteral("band_low")] = slot.band.low;
    json[QStringLiteral("band_high")] = slot.band.high;
    if (slot.plannedRir) json[QStringLiteral("planned_rir")] = slot.plannedRir->toString();
    if (slot.load) json[QStringLiteral("load")] = slot.load->toString();
    putInteger(json, QStringLiteral("rest_s"), slot.restSeconds);
    putText(json, QStringLiteral("note"), slot.note);
    putText(json, QStringLiteral("progression"), slot.progression);
    if (slot.superset > 0) json[QStringLiteral("superset")] = slot.superset;
    if (slot.loadLocked) json[QStringLiteral("load_locked")] = true;
    return json;
}

QJsonArray weeksJson(const std::vector<PlannedWeek>& planned, const Library& library)
{
    QJsonArray weeks;
    for (const PlannedWeek& week : planned) {
        QJsonArray days;
        for (const PlannedDay& day : week.days) {
            QJsonArray slotList;
            for (const Slot& slot : day.slotList) slotList.append(slotJson(slot, library));
            QJsonObject json{{QStringLiteral("date"), dateText(day.date)}, {QStringLiteral("slots"), slotList}};
            putText(json, QStringLiteral("title"), day.title);
            days.append(json);
        }
        weeks.append(QJsonObject{{QStringLiteral("kind"), toText(week.kind)}, {QStringLiteral("days"), days}});
    }
    return weeks;
}

void putEasing(QJsonObject& json, const Easing& easing)
{
    if (easing == Easing{}) return;
    json[QStringLiteral("easing")] = QJsonObject{{QStringLiteral("sets_percent"), easing.setsPercent},
                                                 {QStringLiteral("load_percent"), easing.loadPercent},
                                                 {QStringLiteral("more_reserve"), easing.moreReserve}};
}

}  // namespace

QJsonObject liftToJson(Id<Variant> variant, Id<Grip> grip, Id<RepStandard> standard, const Library& library)
{
    QJsonObject json;
    if (const auto* row = library.find(variant)) json[QStringLiteral("variant")] = uuidText(row->uuid);
    if (const auto* row = library.find(grip)) json[QStringLiteral("grip")] = uuidText(row->uuid);
    if (const auto* row = library.find(standard)) json[QStringLiteral("standard")] = uuidText(row->uuid);
    return json;
}

QJsonArray aimsToJson(const std::vector<MuscleAim>& aims, const Library& library)
{
    QJsonArray list;
    for (const MuscleAim& aim : aims)
        if (const auto* muscle = library.find(aim.muscle))
            list.append(QJsonObject{{QStringLiteral("muscle"), muscle->value.key},
                                    {QStringLiteral("weekly_sets_low"), aim.weeklySetsLow},
                                    {QStringLiteral("weekly_sets_high"), aim.weeklySetsHigh}});
    return list;
}

QJsonObject toJson(const Row<Block>& row, const Library& library)
{
    const Block& block = row.value;
    QJsonObject json{{QStringLiteral("uuid"), uuidText(row.uuid)},
                     {QStringLiteral("name"), block.name},
                     {QStringLiteral("start"), dateText(block.start)},
                     {QStringLiteral("weeks"), weeksJson(block.weeks, library)}};
    putText(json, QStringLiteral("aim"), block.aim);
    putInteger(json, QStringLiteral("minutes_per_day"), block.minutesPerDay);
    putEasing(json, block.easing);
    if (!block.aims.empty()) json[QStringLiteral("aims")] = aimsToJson(block.aims, library);
    QJsonArray daysOff;
    for (const DaysOff& off : block.daysOff) {
        QJsonObject one{{QStringLiteral("first"), dateText(off.first)}, {QStringLiteral("last"), dateText(off.last)}};
        putText(one, QStringLiteral("reason"), off.reason);
        daysOff.append(one);
    }
    if (!daysOff.isEmpty()) json[QStringLiteral("days_off")] = daysOff;
    return json;
}

QJsonObject toJson(const Row<BlockTemplate>& row, const Library& library)
{
    QJsonObject json{{QStringLiteral("uuid"), uuidText(row.uuid)},
                     {QStringLiteral("name"), row.value.name},
                     {QStringLiteral("weeks"), weeksJson(row.value.weeks, library)}};
    putText(json, QStringLiteral("aim"), row.value.aim);
    putEasing(json, row.value.easing);
    return json;
}

}  // namespace steelyard
