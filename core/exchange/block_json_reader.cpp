#include "core/exchange/block_json.h"

#include "core/exchange/json_names.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct BlockJsonText {
    Q_DECLARE_TR_FUNCTIONS(BlockJsonText)
};

Result<Slot> slotFromJson(const QJsonObject& json, const JsonNames& names, const QString& where)
{
    JsonPlace place(json, where + BlockJsonText::tr(", planned slot"));
    const LiftNames lift = liftFromJson(place, names);
    if (!lift.whole()) return fail(place.finish().error());
    Slot slot{.variant = *lift.variant, .grip = *lift.grip, .standard = *lift.standard};
    slot.sets = place.integer(QStringLiteral("sets"));
    slot.band = {place.integer(QStringLiteral("band_low")), place.integer(QStringLiteral("band_high"))};
    slot.plannedRir = place.optionalDecimal(QStringLiteral("planned_rir"));
    slot.load = place.optionalLoad(QStringLiteral("load"));
    slot.restSeconds = place.optionalInteger(QStringLiteral("rest_s"));
    slot.note = place.optionalText(QStringLiteral("note"));
    slot.progression = place.optionalText(QStringLiteral("progression"));
    slot.superset = place.optionalInteger(QStringLiteral("superset")).value_or(0);
    slot.loadLocked = place.flag(QStringLiteral("load_locked"));
    STEELYARD_CHECK(place.finish());
    return slot;
}

Result<PlannedWeek> weekFromJson(const QJsonObject& json, const JsonNames& names, const QString& where)
{
    JsonPlace place(json, where + BlockJsonText::tr(", planned week"));
    PlannedWeek week;
    week.kind = place.choice(QStringLiteral("kind"), WeekKind::Normal);
    const QJsonArray days = place.array(QStringLiteral("days"));
    STEELYARD_CHECK(place.finish());
    for (const auto& item : days) {
        JsonPlace dayPlace(item.toObject(), where + BlockJsonText::tr(", planned day"));
        PlannedDay day;
        day.date = readDate(dayPlace, QStringLiteral("date"));
        day.title = dayPlace.optionalText(QStringLiteral("title"));
        const QJsonArray planned = dayPlace.array(QStringLiteral("slots"));
        STEELYARD_CHECK(dayPlace.finish());
        for (const auto& slot : planned) {
            STEELYARD_TRY(auto one, slotFromJson(slot.toObject(), names, where));
            day.slotList.push_back(std::move(one));
        }
        week.days.push_back(std::move(day));
    }
    return week;
}

Result<std::vector<PlannedWeek>> weeksFromJson(const QJsonArray& list, const JsonNames& names, const QString& where)
{
    std::vector<PlannedWeek> weeks;
    for (const auto& week : list) {
        STEELYARD_TRY(auto one, weekFromJson(week.toObject(), names, where));
        weeks.push_back(std::move(one));
    }
    return weeks;
}

Result<Easing> easingFromJson(JsonPlace& parent, const QString& where)
{
    if (!parent.has(QStringLiteral("easing"))) return Easing{};
    JsonPlace place(parent.object(QStringLiteral("easing")), where + BlockJsonText::tr(", easing"));
    const Easing easing{place.integer(QStringLiteral("sets_percent")), place.integer(QStringLiteral("load_percent")),
                        place.integer(QStringLiteral("more_reserve"))};
    STEELYARD_CHECK(place.finish());
    return easing;
}

Result<std::vector<DaysOff>> daysOffFromJson(const QJsonArray& list, const QString& where)
{
    std::vector<DaysOff> daysOff;
    for (const auto& item : list) {
        JsonPlace place(item.toObject(), where + BlockJsonText::tr(", days off"));
        DaysOff off;
        off.first = readDate(place, QStringLiteral("first"));
        off.last = readDate(place, QStringLiteral("last"));
        off.reason = place.optionalText(QStringLiteral("reason"));
        STEELYARD_CHECK(place.finish());
        daysOff.push_back(std::move(off));
    }
    return daysOff;
}

}  // namespace

LiftNames liftFromJson(JsonPlace& place, const JsonNames& names)
{
    return {readName(place, QStringLiteral("variant"), names.variants),
            readName(place, QStringLiteral("grip"), names.grips),
            readName(place, QStringLiteral("standard"), names.standards)};
}

Result<std::vector<MuscleAim>> aimsFromJson(const QJsonArray& list, const JsonNames& names, const QString& where)
{
    std::vector<MuscleAim> aims;
    for (const auto& item : list) {
        JsonPlace place(item.toObject(), where);
        const auto muscle = names.muscles.find(place.text(QStringLiteral("muscle")));
        const int low = place.integer(QStringLiteral("weekly_sets_low"));
        const int high = place.integer(QStringLiteral("weekly_sets_high"));
        if (muscle == names.muscles.end())
            place.fault(QStringLiteral("muscle"), BlockJsonText::tr("it is not among the muscles"));
        STEELYARD_CHECK(place.finish());
        aims.push_back({muscle->second, low, high});
    }
    return aims;
}

Result<NamedByUuid<Block>> blockFromJson(const QJsonObject& json, Id<Athlete> athlete, const JsonNames& names,
                                         const QString& parent)
{
    const QString where = parent + BlockJsonText::tr(", block");
    JsonPlace place(json, where);
    const QUuid uuid = readUuid(place, QStringLiteral("uuid"));
    Block block{.athlete = athlete};
    block.name = place.text(QStringLiteral("name"));
    block.aim = place.optionalText(QStringLiteral("aim"));
    block.start = readDate(place, QStringLiteral("start"));
    block.minutesPerDay = place.optionalInteger(QStringLiteral("minutes_per_day"));
    STEELYARD_TRY(block.easing, easingFromJson(place, where));
    const QJsonArray aims = place.array(QStringLiteral("aims"));
    const QJsonArray daysOff = place.array(QStringLiteral("days_off"));
    const QJsonArray weeks = place.array(QStringLiteral("weeks"));
    STEELYARD_CHECK(place.finish());
    STEELYARD_TRY(block.aims, aimsFromJson(aims, names, where));
    STEELYARD_TRY(block.daysOff, daysOffFromJson(daysOff, where));
    STEELYARD_TRY(block.weeks, weeksFromJson(weeks, names, where));
    STEELYARD_CHECK(refuseProblems(validate(block), where));
    return NamedByUuid<Block>{uuid, std::move(block)};
}

Result<NamedByUuid<BlockTemplate>> templateFromJson(const QJsonObject& json, const JsonNames& names)
{
    const QString where = BlockJsonText::tr("book.json, template “%1”").arg(json[QStringLiteral("name")].toString());
    JsonPlace place(json, where);
    const QUuid uuid = readUuid(place, QStringLiteral("uuid"));
    BlockTemplate shape;
    shape.name = place.text(QStringLiteral("name"));
    shape.aim = place.optionalText(QStringLiteral("aim"));
    STEELYARD_TRY(shape.easing, easingFromJson(place, where));
    const QJsonArray weeks = place.array(QStringLiteral("weeks"));
    STEELYARD_CHECK(place.finish());
    STEELYARD_TRY(shape.weeks, weeksFromJson(weeks, names, where));
    STEELYARD_CHECK(refuseProblems(validate(shape), where));
    return NamedByUuid<BlockTemplate>{uuid, std::move(shape)};
}

}  // namespace steelyard
